import type { Dimension } from "../quantities/index.js";
import { STEP_RESULTS } from "../terms/index.js";

/** What a slot of a step holds, for rules that read it. */
export type SlotType =
  | { readonly kind: "text"; readonly words?: readonly string[] }
  | { readonly kind: "date" }
  | { readonly kind: "quantity"; readonly dimension: Dimension };

/** Slots by name; `result` is one of every step. */
export type StepSlots = Readonly<Record<string, SlotType>>;

export const COMMON_SLOTS: StepSlots = { result: { kind: "text", words: STEP_RESULTS } };

/** The fields of a cylinder that rules may read. */
export const MEMBER_SLOTS: StepSlots = {
  id: { kind: "text" },
  ratedPressure: { kind: "quantity", dimension: "pressure" },
  waterCapacity: { kind: "quantity", dimension: "volume" },
  manufacturedOn: { kind: "date" },
  requalifiedOn: { kind: "date" },
};
