import type { ScopePlan } from "../model/index.js";
import type { CalendarDate, Dimension, ParsedQuantity, Quantity } from "../quantities/index.js";
import type { UndecidedReason } from "../terms/index.js";
import type { JsonObject } from "./json-value.js";

/** A text that the record states about its subject, or why there is none. */
export type TextFact =
  | { readonly text: string; readonly reason: undefined }
  | { readonly text: undefined; readonly reason: UndecidedReason };

/** Whether a scope holds; a reason where a fact that it needs leaves it open. */
export type ScopeState = boolean | UndecidedReason;

/** Any fact of the record, or why there is none. */
export type AnyFact =
  | { readonly value: string | boolean | CalendarDate | Quantity; readonly reason: undefined }
  | { readonly value: undefined; readonly reason: UndecidedReason };

/** One member of the list that a step is asked of, or the subject as a whole, whose `index` is -1. */
export interface Member {
  readonly index: number;
  readonly object: JsonObject | undefined;
  readonly id: string | undefined;
  readonly fault: UndecidedReason | undefined;
}

/** What the judge halves may know of the record beside their own step; made once per record. */
export interface JudgeContext {
  /** The record's own local date: nothing is ever judged at another. */
  readonly recordDate: CalendarDate;
  /** Whether a gap weighs what a failure weighs. */
  readonly gapsAsOutside: boolean;
  readQuantity(value: unknown, dimension: Dimension): ParsedQuantity;
  /** A quantity named by the policy, of `member` where the step is asked of each. */
  quantityFact(name: string, member: JsonObject | undefined): Quantity | UndecidedReason;
  /** The text under `subject.x` or under a fact's name. */
  textFact(name: string, member: JsonObject | undefined): TextFact;
  fact(name: string, member: JsonObject | undefined): AnyFact;
  /** The name that the record has for its kind of subject, where the fact is that kind and has another name now. */
  formerText(name: string): string | undefined;
  scopeState(scope: ScopePlan): ScopeState;
  /** The members of a list of the subject, such as `subject.cylinders`. */
  members(pointer: string): readonly Member[];
  /** Whether the record vouches for a step together with others. */
  isAttested(step: string): boolean;
  /** What the subject says of which instrument stands for `name`; anything that a record may hold. */
  instrumentRecorded(name: string): unknown;
}
