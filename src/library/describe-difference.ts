import type { CheckPlan, IntervalPlan, Plan, RequirementPlan, StepPlan } from "../model/index.js";
import { type LimitWords, type PartOfPolicy, quoteQuantities } from "../words/index.js";

/** What two policies say of the same part, in words; undefined where one says nothing, or nothing short enough. */
export interface Difference {
  readonly limit?: string | undefined;
  readonly parentLimit?: string | undefined;
}

type Bands = NonNullable<RequirementPlan["tolerance"]>["bands"];

/** Of a tolerance by cases or rows, as many as fit into one sentence. */
const MOST_BANDS = 3;

/** Says how a part of a child differs from its parent's, where that can be said in a figure, a span or a word. */
export function describeDifference(part: PartOfPolicy, child: Plan, parent: Plan, words: LimitWords): Difference {
  switch (part.kind) {
    case "limit":
    case "requirement-left-out":
    case "consequence":
      return describeRequirement(
        part.kind,
        findRequirement(child, part.name, part.requirement),
        findRequirement(parent, part.name, part.requirement),
        words,
      );
    case "interval":
      return describeInterval(findInterval(child, part), findInterval(parent, part), words);
    case "step":
      return describeSpans(findStep(child, part.name), findStep(parent, part.name), words);
    case "competence":
      return {
        limit: sayNames(findCheck(child, part.of)?.competence, words),
        parentLimit: sayNames(findCheck(parent, part.of)?.competence, words),
      };
    case "gaps":
      return { limit: quote(child.gaps), parentLimit: quote(parent.gaps) };
    default:
      return {};
  }
}

function findCheck(plan: Plan, name: string): CheckPlan | undefined {
  return plan.checks.find(({ check }) => check === name);
}

/** `name` is `check/step`. */
function findStep(plan: Plan, name: string): StepPlan | undefined {
  const [check = "", wanted = ""] = name.split("/");
  return findCheck(plan, check)?.steps.find(({ step }) => step === wanted);
}

function findRequirement(plan: Plan, step: string, wanted: string): RequirementPlan | undefined {
  return findStep(plan, step)?.requirements.find(({ name }) => name === wanted);
}

function findInterval(plan: Plan, { name, of }: { readonly name: string; readonly of: string }) {
  return findCheck(plan, of)?.intervals.find(({ interval }) => interval === name);
}

function describeRequirement(
  kind: "limit" | "requirement-left-out" | "consequence",
  child: RequirementPlan | undefined,
  parent: RequirementPlan | undefined,
  words: LimitWords,
): Difference {
  if (kind === "consequence") return { limit: quote(child?.consequence), parentLimit: quote(parent?.consequence) };
  const own = child?.tolerance?.bands ?? [];
  const theirs = parent?.tolerance?.bands ?? [];
  return { limit: sayBands(own, theirs, words), parentLimit: sayBands(theirs, own, words) };
}

/** The bands that the other side does not have in the same way. */
function sayBands(bands: Bands, others: Bands, words: LimitWords): string | undefined {
  const told = ({ for: scope, upTo, accept }: Bands[number]) => JSON.stringify([scope, upTo, accept]);
  const known = others.map(told);
  const own = bands.filter((band) => !known.includes(told(band)));
  if (own.length === 0 || own.length > MOST_BANDS) return undefined;
  const texts = own.map(({ for: scope = {}, upTo, accept }) => {
    const limits = quoteQuantities(words.all(accept.map(({ kind, limit }) => words.bounds[kind](String(limit)))));
    const where = [
      ...Object.entries(scope).map(([fact, values]) => `\`${fact}: ${values.join(", ")}\``),
      ...(upTo === undefined ? [] : [`\`up-to: ${upTo}\``]),
    ];
    return where.length === 0 ? limits : `${where.join(" ")} ${limits}`;
  });
  return texts.join("; ");
}

function describeInterval(
  child: IntervalPlan | undefined,
  parent: IntervalPlan | undefined,
  words: LimitWords,
): Difference {
  if (child?.every === parent?.every) {
    return { limit: quote(child?.requirement.consequence), parentLimit: quote(parent?.requirement.consequence) };
  }
  const say = (interval: IntervalPlan | undefined) => interval && words.every(interval.every);
  return { limit: say(child), parentLimit: say(parent) };
}

/** Of a step itself only a span can be said in a word. */
function describeSpans(child: StepPlan | undefined, parent: StepPlan | undefined, words: LimitWords): Difference {
  const say = (step: StepPlan | undefined) =>
    step?.kind === "in-date" && step.within !== undefined ? words.notOlder(step.within) : undefined;
  const [limit, parentLimit] = [say(child), say(parent)];
  return limit === undefined || parentLimit === undefined || limit === parentLimit ? {} : { limit, parentLimit };
}

function sayNames(names: readonly string[] | undefined, words: LimitWords): string | undefined {
  return names === undefined ? undefined : words.anyOf(names);
}

function quote(word: string | undefined): string | undefined {
  return word === undefined ? undefined : `\`${word}\``;
}
