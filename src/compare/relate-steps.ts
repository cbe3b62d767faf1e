import type { StepPlan, StepPlanOf } from "../model/index.js";
import { parseCalendarSpan } from "../quantities/index.js";
import { weighConsequence } from "../terms/index.js";
import { joinRelations, type Relation, relateAllowed, relateAsked, relateFixed, relateNumbers } from "./relation.js";

const REFER = weighConsequence("refer");

/** How the options of a step stand to those of the parent's step of the same name; its requirements are related apart. */
export function relateSteps(parent: StepPlan, child: StepPlan): Relation {
  const fixed = relateFixed(listFixed(parent), listFixed(child));
  if (parent.kind === "confirm" && child.kind === "confirm")
    return joinRelations([fixed, relateConfirm(parent, child)]);
  if (parent.kind === "match" && child.kind === "match") return joinRelations([fixed, relateMatch(parent, child)]);
  if (parent.kind === "in-date" && child.kind === "in-date") return joinRelations([fixed, relateInDate(parent, child)]);
  if (parent.kind === "timing" && child.kind === "timing") {
    return joinRelations([fixed, relateFixed([parent.fromEvent, parent.toEvent], [child.fromEvent, child.toEvent])]);
  }
  if (parent.kind === "hold" && child.kind === "hold") {
    return joinRelations([
      fixed,
      relateFixed([parent.quantity, parent.temperature], [child.quantity, child.temperature]),
    ]);
  }
  if (parent.kind === "reading" && child.kind === "reading") {
    return joinRelations([fixed, relateFixed([parent.quantity, parent.use], [child.quantity, child.use])]);
  }
  return "cannot-compare";
}

/** Each of these can work either way: a fitting that is not recorded leaves open what would else be judged. */
function listFixed({ formerly, each, whenFitted, instrument }: StepPlan): readonly unknown[] {
  return [formerly, each ?? "", whenFitted ?? "", instrument ?? ""];
}

/** A defect weighs what the step says of it, else at least `refer`, else what the step weighs. */
function relateConfirm(parent: StepPlanOf<"confirm">, child: StepPlanOf<"confirm">): Relation {
  const names = new Set([...parent.defects, ...child.defects].map(({ name }) => name));
  const weigh = ({ defects, requirements }: StepPlanOf<"confirm">, defect: string): number => {
    const named = defects.find(({ name }) => name === defect);
    if (named !== undefined) return weighConsequence(named.consequence);
    return Math.max(REFER, ...requirements.map(({ consequence }) => weighConsequence(consequence)));
  };
  return joinRelations([
    ...[...names].map((name) => relateNumbers(weigh(parent, name), weigh(child, name))),
    relateNumbers(parent.attestable ? 0 : 1, child.attestable ? 0 : 1),
  ]);
}

/**
 * A place more asks more only where a text there weighs no less than beside a step that does not ask for it: there it weighs
 * `refer`, and counts to the letter.
 */
function relateMatch(parent: StepPlanOf<"match">, child: StepPlanOf<"match">): Relation {
  const namesOf = ({ places }: StepPlanOf<"match">) =>
    places.map(({ place, formerly }) => [place, ...formerly].join(" "));
  const places = relateAsked(namesOf(parent), namesOf(child));
  const isMild =
    child.ignore.length > 0 || child.requirements.some(({ consequence }) => weighConsequence(consequence) < REFER);
  const relateFact = (one: string | undefined, other: string | undefined): Relation => {
    if (one === other) return "same";
    if (one === undefined) return "tighter";
    return other === undefined ? "looser" : "cannot-compare";
  };
  const ignored = relateAllowed(parent.ignore, child.ignore);
  return joinRelations([
    places === "tighter" && isMild ? "cannot-compare" : places,
    relateFact(parent.equals, child.equals),
    relateFact(parent.differsFrom, child.differsFrom),
    // Why: what is ignored makes texts the same, which is wanted of the places and not of the text that they differ from.
    parent.differsFrom === undefined || ignored === "same" ? ignored : "cannot-compare",
  ]);
}

function relateInDate(parent: StepPlanOf<"in-date">, child: StepPlanOf<"in-date">): Relation {
  if (parent.within === undefined || child.within === undefined) return relateFixed(parent.notPast, child.notPast);
  return relateSpans(parent.within, child.within);
}

/** Part by part: a span of months and one of days cannot be compared. A longer span allows more. */
export function relateSpans(parent: string, child: string): Relation {
  const one = parseCalendarSpan(parent);
  const other = parseCalendarSpan(child);
  if (one === undefined || other === undefined) return "cannot-compare";
  return joinRelations([
    relateNumbers(other.years * 12 + other.months, one.years * 12 + one.months),
    relateNumbers(other.weeks * 7 + other.days, one.weeks * 7 + one.days),
  ]);
}
