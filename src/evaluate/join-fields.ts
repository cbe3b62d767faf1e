import type { StepPlan } from "../model/index.js";
import { listFields, type StepField } from "../steps/index.js";

/** What steps of one kind and one name ask for together: a policy's, and its parent's where that stands beside it. */
export function joinFields(plans: readonly StepPlan[]): readonly StepField[] {
  const joined = new Map<string, StepField>();
  for (const field of plans.flatMap(listFields)) {
    const known = joined.get(field.key);
    joined.set(field.key, known === undefined ? field : joinField(known, field));
  }
  return [...joined.values()];
}

function joinField(one: StepField, other: StepField): StepField {
  if (one.type === "places" && other.type === "places") {
    return { ...one, places: joinNames(one.places, other.places) };
  }
  if (one.type === "choice" && other.type === "choice") {
    return { ...one, words: joinNames(one.words, other.words) };
  }
  if (one.type === "events" && other.type === "events") {
    return { ...one, events: joinNames(one.events, other.events) };
  }
  return one;
}

function joinNames(some: readonly string[], more: readonly string[]): readonly string[] {
  return [...new Set([...some, ...more])];
}
