import type { BoundPlan, CheckPlan, Plan, RequirementPlan } from "../model/index.js";
import { createPaint, type ReportOptions } from "./palette.js";
import { makePrintable } from "./printable-text.js";

/** The policy as it stands after `extends`: checks, steps, requirements, limits, and where each is stated. */
export function renderResolved(plan: Plan, options: ReportOptions): string {
  const paint = createPaint(options);
  const { id, version, title } = plan.policy;
  const lines = [paint("strong", makePrintable(`${id} ${version}, ${title}`))];
  for (const check of plan.checks) {
    lines.push(
      "",
      paint("strong", makePrintable(`${check.check}${check.title === undefined ? "" : `: ${check.title}`}`)),
    );
    for (const step of check.steps) {
      lines.push(`  ${step.step} (${step.kind})`);
      for (const requirement of step.requirements) {
        lines.push(...renderRequirement(requirement, `${check.check}/${step.step}/${requirement.name}`, plan));
      }
    }
    lines.push(...renderOthers(check, plan));
  }
  return `${lines.join("\n")}\n`;
}

function renderRequirement(
  { name, consequence, tolerance }: RequirementPlan,
  key: string,
  plan: Plan,
): readonly string[] {
  const head = `    ${name}: ${consequence}`;
  if (tolerance === undefined) return [`${head}${describeSpot(key, plan)}`];
  const bands = tolerance.bands.map((band) => {
    const scope = Object.entries(band.for ?? {}).map(([fact, values]) => `${fact} ${values.join(" or ")}`);
    const upTo = band.upTo === undefined ? [] : [`${tolerance.by ?? ""} up to ${band.upTo}`];
    const where = [...scope, ...upTo].join(", ");
    return `${describeBounds(band.accept)}${where === "" ? "" : ` (${where})`}`;
  });
  return [`${head}, ${makePrintable(bands.join("; "))}${describeSpot(key, plan)}`];
}

function describeBounds(bounds: readonly BoundPlan[]): string {
  return bounds.map(({ kind, limit }) => `${kind.replace("-", " ")} ${limit}`).join(" and ");
}

function renderOthers({ intervals, rules, adoptions }: CheckPlan, plan: Plan): readonly string[] {
  return [
    ...intervals.map(
      ({ interval, every }) => `  interval ${interval}: every ${every}${describeSpot(`interval/${interval}`, plan)}`,
    ),
    ...rules.map(
      ({ rule, title }) =>
        `  rule ${rule}${title === undefined ? "" : `: ${title}`}${describeSpot(`rule/${rule}`, plan)}`,
    ),
    ...adoptions.map(
      ({ id, step, from, until, order }) =>
        `  adopted ${id}: ${step} from ${from} until ${until ?? "review"} under ${order}`,
    ),
  ].map(makePrintable);
}

/** The place of the limit, else of what asks. */
function describeSpot(key: string, plan: Plan): string {
  const known = Object.hasOwn(plan.positions.at, key) ? plan.positions.at[key] : undefined;
  if (known === undefined) return "";
  const [file, line, column] = known.limitAt ?? known.where;
  return makePrintable(`  [${plan.positions.files[file] ?? ""}:${line}:${column}]`);
}
