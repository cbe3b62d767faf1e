import type { Diagnostics } from "../diagnostics/index.js";
import type {
  InstrumentPlan,
  PolicyDocument,
  PolicyTolerance,
  RequirementPlan,
  ScopePlan,
  StepPlan,
} from "../model/index.js";
import type { Place } from "../source/index.js";
import type { Consequence } from "../terms/index.js";
import type { FactType } from "./fact-type.js";

type PolicyScope = NonNullable<PolicyDocument["for"]>;

/** A tolerance of the policy with the place where it is stated. */
export interface DeclaredTolerance {
  readonly document: PolicyTolerance;
  readonly pointer: string;
}

/** What the compile halves may know of the policy around their step. */
export interface CompileContext {
  readonly diagnostics: Diagnostics;
  readonly tolerances: ReadonlyMap<string, DeclaredTolerance>;
  readonly instruments: ReadonlyMap<string, InstrumentPlan>;
  readonly factTypes: ReadonlyMap<string, FactType>;
  /** The consequence of steps that state none. */
  readonly checkConsequence: Consequence;
  /** JSON Pointer of the step in the policy document. */
  readonly pointer: string;
  /** Compiles a scope, with reports on what is not known in it. */
  scope(scope: PolicyScope, pointer: string): ScopePlan;
  place(pointer: string, part?: "key" | "value"): Place;
  /** The known name closest to `word`, where one is close. */
  nearest(word: string, known: readonly string[]): string | undefined;
}

/** A requirement with the pointers of what asks for it and of its limit. */
export interface CompiledRequirement {
  readonly plan: RequirementPlan;
  /** The step's key that asks, as a pointer to that key. */
  readonly askedAt: string;
  readonly limitAt: string | undefined;
}

export interface CompiledStep {
  readonly plan: StepPlan;
  readonly requirements: readonly CompiledRequirement[];
}
