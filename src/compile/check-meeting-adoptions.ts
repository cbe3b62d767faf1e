import type { AdoptionPlan, CheckPlan, ScopePlan } from "../model/index.js";
import { compareDates, parseDate } from "../quantities/index.js";
import type { PlanContext } from "./plan-context.js";

/** Warns of two adoptions that may put limits of their own on one requirement of one record. */
export function checkMeetingAdoptions(checks: readonly CheckPlan[], context: PlanContext): void {
  for (const { check, steps, adoptions } of checks) {
    const accepting = adoptions.filter(({ accept }) => accept !== undefined);
    accepting.forEach((one, index) => {
      for (const other of accepting.slice(0, index)) {
        const asked = steps.find(({ step }) => step === one.step)?.requirements ?? [];
        const shared = asked.find(({ name }) => covers(one, name) && covers(other, name));
        if (one.step !== other.step || shared === undefined) continue;
        if (!mayMeetInTime(one, other) || areApart(one.only, other.only)) continue;
        report(one, other, `${check}/${one.step} ${shared.name}`, context);
      }
    });
  }
}

function covers({ requirements }: AdoptionPlan, name: string): boolean {
  return requirements === undefined || requirements.some((one) => one === name);
}

function mayMeetInTime(one: AdoptionPlan, other: AdoptionPlan): boolean {
  return !endsBefore(one, other) && !endsBefore(other, one);
}

function endsBefore({ until }: AdoptionPlan, { from }: AdoptionPlan): boolean {
  const last = parseDate(until);
  const first = parseDate(from);
  return last !== undefined && first !== undefined && compareDates(last, first) === -1;
}

/** Whether some fact cannot satisfy both scopes. */
function areApart(one: ScopePlan = {}, other: ScopePlan = {}): boolean {
  return Object.entries(one).some(([fact, values]) => {
    const others = Object.hasOwn(other, fact) ? other[fact] : undefined;
    return others !== undefined && !values.some((value) => others.includes(value));
  });
}

/** Why only in the policy's own file: what its parent states twice is the parent's to mend. */
function report(one: AdoptionPlan, other: AdoptionPlan, requirement: string, context: PlanContext): void {
  const { resolved, diagnostics } = context;
  const adopted = resolved.document.adopted ?? [];
  const spots = [one, other].map(({ id }) => ({
    id,
    pointer: `/adopted/${adopted.findIndex((stated) => stated.id === id)}/id`,
  }));
  const here = spots.find(({ pointer }) => !resolved.isInherited(pointer));
  const there = spots.find((spot) => spot !== here);
  if (here === undefined || there === undefined) return;
  const related = [{ message: diagnostics.words.related.otherOne, place: resolved.place(there.pointer) }];
  const params = { adoption: here.id, other: there.id, requirement };
  diagnostics.report("plan/adoptions-meet", resolved.place(here.pointer), params, related);
}
