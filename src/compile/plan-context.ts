import type { Diagnostics } from "../diagnostics/index.js";
import type { InstrumentPlan, IntervalPlan } from "../model/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import type { DeclaredTolerance, FactType } from "../steps/index.js";
import type { createPositions } from "./positions.js";

/** What the compile halves of this room share. */
export interface PlanContext {
  readonly resolved: ResolvedPolicy;
  readonly diagnostics: Diagnostics;
  readonly tolerances: ReadonlyMap<string, DeclaredTolerance>;
  readonly instruments: ReadonlyMap<string, InstrumentPlan>;
  readonly factTypes: ReadonlyMap<string, FactType>;
  readonly intervals: ReadonlyMap<string, IntervalPlan>;
  /** The day against which review dates are compared. */
  readonly asOf: string | undefined;
  readonly positions: ReturnType<typeof createPositions>;
}
