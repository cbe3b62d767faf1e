import type { Diagnostics } from "../diagnostics/index.js";
import type { CheckPlan, Covering, Plan, PolicyDocument } from "../model/index.js";
import { digestPlan } from "../plan/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import type { DeclaredTolerance } from "../steps/index.js";
import { findNearest, PLAN_FORMAT } from "../terms/index.js";
import { checkAlikeWords } from "./check-alike-words.js";
import { checkDates } from "./check-dates.js";
import { checkMeetingAdoptions } from "./check-meeting-adoptions.js";
import { checkUnusedTolerances } from "./check-unused-tolerances.js";
import { compileAdoptions } from "./compile-adoptions.js";
import { compileCheck } from "./compile-check.js";
import { compileFacts, listFactTypes } from "./compile-facts.js";
import { compileInstruments } from "./compile-instruments.js";
import { compileIntervals } from "./compile-intervals.js";
import { compileRules } from "./compile-rules.js";
import { compileScope } from "./compile-scope.js";
import { listRepeated } from "./list-repeated.js";
import type { PlanContext } from "./plan-context.js";
import { createPositions } from "./positions.js";

/** A plan, and the adoptions that cover what the policy states looser than its parent. */
export interface MadePlan {
  readonly plan: Plan;
  readonly coverings: readonly Covering[];
}

/** Makes a plan of a resolved policy; undefined where a mistake was reported that makes it unusable. */
export function makePlan(resolved: ResolvedPolicy, diagnostics: Diagnostics, asOf?: string): MadePlan | undefined {
  const { document } = resolved;
  const facts = compileFacts({ resolved, diagnostics });
  const declared = {
    resolved,
    diagnostics,
    tolerances: declareTolerances(document),
    instruments: compileInstruments(resolved, diagnostics),
    factTypes: listFactTypes(facts),
    positions: createPositions(),
    asOf,
    intervals: new Map(),
  };
  const context: PlanContext = { ...declared, intervals: compileIntervals(declared) };
  checkDates(resolved, diagnostics, asOf);
  const { deference } = document;
  if (deference === undefined) diagnostics.report("plan/no-deference", resolved.place("/policy", "key"), {});
  const scope = compileScope(document.for, "/for", context);
  const checks = compileChecks(context);
  compileRules(checks, context);
  const coverings = compileAdoptions(checks, context);
  checkMeetingAdoptions(checks, context);
  checkUnusedTolerances(context);
  checkAlikeWords(context);
  warnUnused(checks, context);
  if (diagnostics.hasErrors || deference === undefined) return undefined;
  const plan: Omit<Plan, "digest" | "positions"> = {
    tenbar: 1,
    kind: "plan",
    format: PLAN_FORMAT,
    policy: copyHead(document),
    deference: deference.trim(),
    cautions: (document.cautions ?? []).map((caution) => caution.trim()),
    gaps: document.undecided === "as-outside" ? "as-outside" : "at-most-refer",
    ...(scope === undefined ? {} : { for: scope }),
    facts: [...facts],
    instruments: [...context.instruments.values()],
    checks,
  };
  return { plan: { ...plan, digest: digestPlan(plan), positions: context.positions.list() }, coverings };
}

function declareTolerances(document: PolicyDocument): ReadonlyMap<string, DeclaredTolerance> {
  const entries = Object.entries(document.tolerances ?? {});
  return new Map(entries.map(([name, tolerance]) => [name, { document: tolerance, pointer: `/tolerances/${name}` }]));
}

function copyHead({ policy }: PolicyDocument): Plan["policy"] {
  const { id, title, version, issuer, status, effective } = policy;
  return {
    id,
    title,
    version,
    ...(issuer === undefined ? {} : { issuer }),
    status,
    ...(effective === undefined ? {} : { effective: { ...effective } }),
  };
}

function compileChecks(context: PlanContext): CheckPlan[] {
  const entries = Object.entries(context.resolved.document.checks ?? {});
  if (entries.length === 0) context.diagnostics.report("plan/no-checks", context.resolved.place("/policy", "key"), {});
  checkNames(context);
  return entries.flatMap(([name, check]) => compileCheck(name, check, context) ?? []);
}

/** Why: a record names its check by one name, present or former, and must find one check by it. */
function checkNames({ resolved, diagnostics }: PlanContext): void {
  const names = Object.entries(resolved.document.checks ?? {}).flatMap(([name, { formerly = [] }]) => [
    { name, place: resolved.place(`/checks/${name}`, "key") },
    ...formerly.map((former, index) => ({
      name: former,
      place: resolved.place(`/checks/${name}/formerly/${index}`),
    })),
  ]);
  for (const { name, place, first } of listRepeated(names)) {
    const related = [{ message: diagnostics.words.related.otherOne, place: first }];
    diagnostics.report("plan/duplicate-name", place, { thing: "check", name }, related);
  }
}

/**
 * Why: a tolerance that nothing uses is most often one whose name was mistyped where it was to be used. One of a parent is left
 * unused by a step that the policy states otherwise, which is no slip.
 */
function warnUnused(
  checks: readonly CheckPlan[],
  { resolved, diagnostics, tolerances, instruments }: PlanContext,
): void {
  if (diagnostics.hasErrors) return;
  const warn = (thing: "tolerance" | "instrument", name: string): void => {
    const place = resolved.place(`/${thing}s/${name}`, "key");
    const inherited = Object.keys(resolved.parent?.document[`${thing}s`] ?? {});
    const known = inherited.filter((one) => resolved.isInherited(`/${thing}s/${one}`));
    if (resolved.isInherited(`/${thing}s/${name}`)) return;
    diagnostics.report("plan/unused", place, { thing, name, nearest: findNearest(name, known) });
  };
  const steps = checks.flatMap((check) => check.steps);
  const usedTolerances = new Set(steps.flatMap((step) => step.requirements.map(({ tolerance }) => tolerance?.name)));
  const usedInstruments = new Set(
    steps.flatMap(({ instrument }) =>
      instrument === undefined ? [] : [instrument, ...(instruments.get(instrument)?.oneOf ?? [])],
    ),
  );
  for (const name of tolerances.keys()) {
    if (!usedTolerances.has(name)) warn("tolerance", name);
  }
  for (const name of instruments.keys()) {
    if (!usedInstruments.has(name)) warn("instrument", name);
  }
}
