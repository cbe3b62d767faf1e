import type { BoundPlan, CheckPlan, Plan, RequirementPlan } from "../model/index.js";
import type { ReportWords } from "../words/index.js";
import { describeBasis } from "./describe-basis.js";
import { createPaint, type ReportOptions, wordsOf } from "./palette.js";
import { makePrintable } from "./printable-text.js";
import { wrapText } from "./wrap-text.js";

/** The policy as it stands after `extends`: checks, steps, requirements, limits, and where each is stated. */
export function renderResolved(plan: Plan, options: ReportOptions): string {
  const paint = createPaint(options);
  const words = wordsOf(options);
  const { id, version, title } = plan.policy;
  const head = (text: string) => wrapText(makePrintable(text), options.width, "").map((line) => paint("strong", line));
  const lines = [...head(`${id} ${version}, ${title}`)];
  for (const check of plan.checks) {
    lines.push("", ...head(`${check.check}${check.title === undefined ? "" : `: ${check.title}`}`));
    for (const step of check.steps) {
      lines.push(`  ${step.step} (${step.kind})`);
      for (const requirement of step.requirements) {
        const key = `${check.check}/${step.step}/${requirement.name}`;
        const text = describeRequirement(requirement, key, plan, words);
        lines.push(...wrapText(text, options.width, "      ", "    "));
      }
    }
    lines.push(...renderOthers(check, plan, words, options.width));
  }
  return `${lines.join("\n")}\n`;
}

/** What a requirement weighs, what it accepts and cautions of, what that rests on, and where it is stated. */
function describeRequirement(
  { name, consequence, tolerance, basis }: RequirementPlan,
  key: string,
  plan: Plan,
  words: ReportWords,
): string {
  const { resolved } = words;
  const head = `${words.requirements[name]}: ${words.consequences[consequence]}`;
  const rest = basis === undefined ? "" : `; ${makePrintable(describeBasis(basis, words.basis))}`;
  if (tolerance === undefined) return `${head}${rest}${describeSpot(key, plan)}`;
  const bands = tolerance.bands.map((band) => {
    const scope = Object.entries(band.for ?? {}).map(([fact, values]) => `${fact} ${values.join(resolved.or)}`);
    const upTo = band.upTo === undefined ? [] : [resolved.upTo(tolerance.by ?? "", String(band.upTo))];
    const where = [...scope, ...upTo].join(", ");
    const caution = band.caution.map((region) => `, ${words.outcomes.caution}: ${describeBounds(region, words)}`);
    return `${describeBounds(band.accept, words)}${where === "" ? "" : ` (${where})`}${caution.join("")}`;
  });
  return `${head}, ${makePrintable(bands.join("; "))}${rest}${describeSpot(key, plan)}`;
}

function describeBounds(bounds: readonly BoundPlan[], { resolved }: ReportWords): string {
  return bounds.map(({ kind, limit }) => `${resolved.bounds[kind]} ${limit}`).join(resolved.and);
}

function renderOthers(
  { intervals, rules, adoptions }: CheckPlan,
  plan: Plan,
  words: ReportWords,
  width: number,
): readonly string[] {
  const { report, resolved } = words;
  return [
    ...intervals.map(
      ({ interval, every }) => `  ${resolved.interval(interval, every)}${describeSpot(`interval/${interval}`, plan)}`,
    ),
    ...rules.map(
      ({ rule, title }) =>
        `  ${resolved.rule(rule)}${title === undefined ? "" : `: ${title}`}${describeSpot(`rule/${rule}`, plan)}`,
    ),
    ...[...adoptions, ...intervals.flatMap((one) => nameIntervalAdoptions(one, report))].map(
      (adoption) =>
        `  ${resolved.adopted(adoption.id, nameAdopted(adoption), adoption.from, adoption.until, adoption.order)}${describeAdoption(adoption, words)}`,
    ),
  ].flatMap((line) => wrapText(makePrintable(line), width, "    ", "  "));
}

function nameIntervalAdoptions({ interval, adoptions }: CheckPlan["intervals"][number], report: ReportWords["report"]) {
  return adoptions.map((adoption) => ({ ...adoption, step: report.interval(interval) }));
}

/** The step, with the requirements where the adoption speaks of some only. */
function nameAdopted({
  step,
  requirements = [],
}: {
  readonly step: string;
  readonly requirements?: readonly string[] | undefined;
}): string {
  return [step, ...requirements].join(" ");
}

type AnyAdoption = Pick<CheckPlan["adoptions"][number], "accept" | "instead" | "only"> & {
  readonly otherwise?: unknown;
};

/** What stands while an adoption applies, for which records, and what stands else. */
function describeAdoption({ accept, instead, only, otherwise }: AnyAdoption, words: ReportWords): string {
  const { resolved } = words;
  const change =
    accept !== undefined
      ? resolved.accepts(describeBounds(accept, words))
      : instead !== undefined
        ? resolved.instead(instead)
        : otherwise === undefined
          ? resolved.omits
          : "";
  const scope = Object.entries(only ?? {}).map(([fact, values]) => `${fact} ${values.join(resolved.or)}`);
  return `${change}${scope.length === 0 ? "" : resolved.only(scope.join(", "))}${otherwise === undefined ? "" : resolved.elseAsParent}`;
}

/** The place of the limit, else of what asks. */
function describeSpot(key: string, plan: Plan): string {
  const known = Object.hasOwn(plan.positions.at, key) ? plan.positions.at[key] : undefined;
  if (known === undefined) return "";
  const [file, line, column] = known.limitAt ?? known.where;
  return makePrintable(`  [${plan.positions.files[file] ?? ""}:${line}:${column}]`);
}
