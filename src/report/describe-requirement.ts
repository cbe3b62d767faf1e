import type { BoundPlan, Plan, RequirementPlan, StepPlan } from "../model/index.js";
import type { AssessmentWords, ReportWords } from "../words/index.js";
import { describeBasis } from "./describe-basis.js";
import { makePrintable } from "./printable-text.js";

/** The words of a policy as it stands: those of reports, and of limits and rules. */
export interface PolicyWords {
  readonly report: ReportWords;
  readonly assessment: Pick<AssessmentWords, "limits" | "rules">;
}

/** What a requirement of a step weighs, what it accepts and cautions of, what that rests on, and where `key` is stated. */
export function describeRequirement(
  requirement: RequirementPlan,
  step: StepPlan,
  key: string,
  plan: Plan,
  words: PolicyWords,
): string {
  const { name, consequence, tolerance } = requirement;
  const { requirements, consequences } = words.report;
  const limits = tolerance === undefined ? describeStepLimits(step, words) : describeBands(tolerance, words.report);
  const said = [`${requirements[name]}: ${consequences[consequence]}`, ...limits].join(", ");
  return `${makePrintable(said)}${describeBasisOf(requirement, words)}${describeSpot(key, plan)}`;
}

export function describeBasisOf({ basis }: RequirementPlan, { report }: PolicyWords): string {
  return basis === undefined ? "" : `; ${makePrintable(describeBasis(basis, report.basis))}`;
}

/** What is asked by steps whose limits are no tolerance. */
function describeStepLimits(step: StepPlan, { assessment: { limits }, report }: PolicyWords): readonly string[] {
  switch (step.kind) {
    case "in-date":
      return [step.within === undefined ? limits.notPast : limits.notOlder(step.within)];
    case "match": {
      const places = step.places.map(({ place }) => place).join(", ");
      return [
        `${limits.sameInEveryPlace} (${places})`,
        ...(step.equals === undefined ? [] : [limits.equalTo(step.equals)]),
        ...(step.differsFrom === undefined ? [] : [limits.otherThan(step.differsFrom)]),
        ...(step.ignore.length === 0 ? [] : [report.resolved.ignoring(step.ignore.join(", "))]),
      ];
    }
    case "confirm":
      return step.defects.map(({ name, consequence }) =>
        report.resolved.defect(name, report.consequences[consequence]),
      );
    default:
      return [];
  }
}

function describeBands(
  { bands, by = "" }: NonNullable<RequirementPlan["tolerance"]>,
  words: ReportWords,
): readonly string[] {
  const { resolved } = words;
  const said = bands.map((band) => {
    const upTo = band.upTo === undefined ? [] : [resolved.upTo(by, String(band.upTo))];
    const where = [...listScope(band.for, words), ...upTo].join(", ");
    const caution = band.caution.map((region) => `, ${words.outcomes.caution}: ${describeBounds(region, words)}`);
    return `${describeBounds(band.accept, words)}${where === "" ? "" : ` (${where})`}${caution.join("")}`;
  });
  return [said.join("; ")];
}

export function describeBounds(bounds: readonly BoundPlan[], { resolved }: ReportWords): string {
  return bounds.map(({ kind, limit }) => `${resolved.bounds[kind]} ${limit}`).join(resolved.and);
}

/** For which records something holds, a fact each. */
export function listScope(
  scope: Readonly<Record<string, readonly string[]>> | undefined,
  { resolved }: ReportWords,
): readonly string[] {
  return Object.entries(scope ?? {}).map(([fact, values]) => `${fact} ${values.join(resolved.or)}`);
}

/** The place of the limit, else of what asks. */
export function describeSpot(key: string, plan: Plan): string {
  const known = Object.hasOwn(plan.positions.at, key) ? plan.positions.at[key] : undefined;
  if (known === undefined) return "";
  const [file, line, column] = known.limitAt ?? known.where;
  return makePrintable(`  [${plan.positions.files[file] ?? ""}:${line}:${column}]`);
}
