import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import type { ParsedPolicy } from "../read/index.js";

type Tolerance = NonNullable<PolicyDocument["tolerances"]>[string];
type PolicyStep = NonNullable<NonNullable<PolicyDocument["checks"]>[string]["steps"]>[number];
type Refuse = (pointer: string, option: string) => void;

/** Refuses every option of the language that this version does not judge; true where there was one. */
export function refuseNotYet(parsed: ParsedPolicy, diagnostics: Diagnostics): boolean {
  let refused = false;
  const refuse: Refuse = (pointer, option) => {
    diagnostics.report("plan/not-yet", parsed.place(pointer, "key"), { option });
    refused = true;
  };
  const { tolerances = {}, checks = {} } = parsed.document;
  for (const [name, tolerance] of Object.entries(tolerances))
    refuseInTolerance(tolerance, `/tolerances/${name}`, refuse);
  for (const [name, { steps = [] }] of Object.entries(checks)) {
    for (const [index, step] of steps.entries()) refuseInStep(step, `/checks/${name}/steps/${index}`, refuse);
  }
  return refused;
}

function refuseInTolerance(tolerance: Partial<Tolerance>, pointer: string, refuse: Refuse): void {
  if (tolerance.comparison === "guarded") refuse(`${pointer}/comparison`, "comparison: guarded");
  for (const option of ["confidence", "trust"] as const) {
    if (tolerance[option] !== undefined) refuse(`${pointer}/${option}`, option);
  }
}

function refuseInStep(step: PolicyStep, pointer: string, refuse: Refuse): void {
  if (step.kind === "reading" && step.use !== undefined) refuse(`${pointer}/use`, "use");
  if (step.kind === "hold" && step.temperature === "required") {
    refuse(`${pointer}/temperature`, "temperature: required");
  }
  for (const [key, value] of Object.entries(listInline(step))) {
    if (typeof value === "object") refuseInTolerance(value, `${pointer}/${key}`, refuse);
  }
}

/** The keys of a step under which a tolerance may be written. */
function listInline(step: PolicyStep): Readonly<Record<string, string | Partial<Tolerance> | undefined>> {
  switch (step.kind) {
    case "reading":
    case "timing":
      return { tolerance: step.tolerance };
    case "hold":
      return { drop: step.drop, rise: step.rise, change: step.change };
    default:
      return {};
  }
}
