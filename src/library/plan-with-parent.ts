import { coverDepartures } from "../compare/index.js";
import { makePlan } from "../compile/index.js";
import { createDiagnostics, type Diagnostics } from "../diagnostics/index.js";
import type { AdoptionStanding, Covering, Plan } from "../model/index.js";
import { compareDates, parseDate } from "../quantities/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { warnDepartures } from "./warn-departures.js";

/** A policy as it is written, and with what stands where its covering adoptions do not apply. */
export interface PlannedPolicy {
  readonly stated: Plan;
  readonly covered: Plan;
}

/**
 * Plans a policy beside its parent; undefined where a mistake was reported that makes it unusable.
 *
 * @param youngest the report of the policy that is compiled: what an ancestor cannot be held to beside its own parent shows nowhere
 * else, and must not pass in silence
 */
export function planWithParent(
  resolved: ResolvedPolicy,
  diagnostics: Diagnostics,
  asOf?: string,
  youngest: Diagnostics = diagnostics,
): PlannedPolicy | undefined {
  const made = makePlan(resolved, diagnostics, asOf);
  if (made === undefined) return undefined;
  const { plan } = made;
  // Why: an order of the parent's covers what the parent states, and nothing that this policy loosens further.
  const coverings = made.coverings.filter(({ pointer }) => !resolved.isInherited(`${pointer}/id`));
  const unparented = { stated: plan, covered: plan };
  if (resolved.parent === undefined) {
    reportIdle(coverings, resolved, diagnostics);
    return unparented;
  }
  // Why: a parent is compiled apart and in silence, since what is wrong with it by itself stands in the child's own report.
  const parent = planWithParent(resolved.parent, createDiagnostics(), undefined, youngest);
  if (parent === undefined) {
    if (diagnostics.hasErrors) return undefined;
    diagnostics.report("resolve/parent-alone", resolved.place("/extends"), {});
    return unparented;
  }
  const reports = new Set([diagnostics, youngest]);
  for (const report of reports) refuseMoved(parent.stated, plan, resolved, report);
  warnDepartures(parent.stated, parent.covered, plan, coverings, resolved, resolved.parent, diagnostics);
  const generation = countAncestors(resolved);
  const inherited = (resolved.document.adopted ?? []).flatMap(({ id }, index) =>
    resolved.isInherited(`/adopted/${index}/id`) ? [id] : [],
  );
  const plans = { parent: parent.stated, parentCovered: parent.covered, child: plan, generation, inherited };
  const outcome = coverDepartures(plans, coverings);
  reportIdle(outcome.idle, resolved, diagnostics);
  const stuck = [
    ...outcome.stuck,
    ...outcome.stuckParents.map((one) => ({ ...one, pointer: findAdoption(one.id, resolved) })),
  ];
  for (const report of reports) for (const covering of stuck) reportStuck(covering, plan, resolved, report);
  return diagnostics.hasErrors ? undefined : { stated: plan, covered: outcome.plan };
}

/** An inherited adoption that names no requirement must mean the same one here, lest an order about a drop let a rise pass. */
function refuseMoved(parent: Plan, plan: Plan, resolved: ResolvedPolicy, diagnostics: Diagnostics): void {
  for (const [index, { id, step: path, requirement, accept }] of (resolved.document.adopted ?? []).entries()) {
    if (accept === undefined || path === undefined || requirement !== undefined) continue;
    if (!resolved.isInherited(`/adopted/${index}/id`)) continue;
    const meant = listLimited(path, parent);
    const known = listLimited(path, plan);
    if (meant.length !== 1 || known.length !== 1 || meant[0] === known[0]) continue;
    const [check = "", step] = path.split("/");
    const at = resolved.document.checks?.[check]?.steps?.findIndex((one) => one.step === step) ?? -1;
    const place = resolved.place(`/adopted/${index}/accept`, "key");
    const related = [{ message: diagnostics.words.related.parents, place }];
    const params = { adoption: id, step: path, known };
    diagnostics.report(
      "resolve/adoption-does-not-fit",
      resolved.place(`/checks/${check}/steps/${at}`),
      params,
      related,
    );
  }
}

/** The requirements of a step, named `check/step`, that have limits. */
function listLimited(path: string, { checks }: Plan): readonly string[] {
  const steps = checks.flatMap(({ check, steps }) => steps.filter(({ step }) => `${check}/${step}` === path));
  return steps.flatMap(({ requirements }) =>
    requirements.flatMap(({ name, tolerance }) => (tolerance === undefined ? [] : [name])),
  );
}

function findAdoption(id: string, { document }: ResolvedPolicy): string {
  return `/adopted/${(document.adopted ?? []).findIndex((one) => one.id === id)}`;
}

function countAncestors({ parent }: ResolvedPolicy): number {
  return parent === undefined ? 0 : 1 + countAncestors(parent);
}

function reportIdle(coverings: readonly Covering[], resolved: ResolvedPolicy, diagnostics: Diagnostics): void {
  for (const { id, pointer } of coverings) {
    diagnostics.report("resolve/covers-nothing", resolved.place(`${pointer}/id`), { adoption: id });
  }
}

/**
 * Why: with nothing to fall back on, the looser limit would go on passing records after the order has ended, and would before it
 * began, unless the policy itself came into force no sooner.
 */
function reportStuck(
  covering: AdoptionStanding & Pick<Covering, "pointer">,
  plan: Plan,
  resolved: ResolvedPolicy,
  diagnostics: Diagnostics,
): void {
  const inForce = parseDate(plan.policy.effective?.from);
  const from = parseDate(covering.from);
  const isEarlier = inForce === undefined || from === undefined || compareDates(inForce, from) === -1;
  const keys = (["until", "only"] as const).filter((key) => covering[key] !== undefined);
  for (const key of keys.length === 0 && isEarlier ? (["from"] as const) : keys) {
    const place = resolved.place(`${covering.pointer}/${key}`, "key");
    diagnostics.report("plan/covering-cannot-lapse", place, { adoption: covering.id, key });
  }
}
