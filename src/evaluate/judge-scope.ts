import type { ScopePlan } from "../model/index.js";
import type { JudgeContext } from "../steps/index.js";
import { weighConsequence } from "../terms/index.js";
import { isAccepted } from "./is-accepted.js";
import type { Remark } from "./judgement.js";
import type { PreparedCheck, PreparedPolicy } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

const REFER = weighConsequence("refer");

/**
 * Whether the policy and the check are meant for this record. Another subject is `refer` and is not judged; a fact that is
 * missing leaves it open: the record is judged, and weighs at least `refer`.
 */
export function judgeScope(
  policy: PreparedPolicy,
  check: PreparedCheck | undefined,
  envelope: Envelope,
  context: JudgeContext,
): readonly Remark[] {
  const remarks: Remark[] = [];
  if (policy.scope !== undefined) {
    compareScope(policy.scope, envelope, context, policy, "record/not-for-this-policy", remarks);
  }
  if (check === undefined) return onlyRefusals(remarks);
  const { subject, for: scope } = check.plan;
  if (scope !== undefined) compareScope(scope, envelope, context, policy, "record/not-for-this-check", remarks);
  const kind = envelope.subjectKind.trim();
  if (subject === undefined || subject.kind === kind) return onlyRefusals(remarks);
  if (!remarks.some(isRefusal)) remarks.push(refuse("record/not-for-this-check", "kind", kind, envelope.check, policy));
  return onlyRefusals(remarks);
}

/** Where a record is not for the policy, nothing else about its scope matters. */
function onlyRefusals(remarks: readonly Remark[]): readonly Remark[] {
  if (remarks.length === 0) return remarks;
  const refusals = remarks.filter(isRefusal);
  return refusals.length > 0 ? refusals : remarks;
}

function isRefusal({ reason }: Remark): boolean {
  return reason === "not-for-this-policy";
}

type ScopeCode = "record/not-for-this-policy" | "record/not-for-this-check";

/** Adds a remark for each fact that has another value than `wanted`, or that is missing. */
function compareScope(
  wanted: ScopePlan,
  envelope: Envelope,
  context: JudgeContext,
  policy: PreparedPolicy,
  code: ScopeCode,
  remarks: Remark[],
): void {
  for (const [fact, accepted] of Object.entries(wanted)) {
    const { text, reason } = context.textFact(fact, undefined);
    const state = text === undefined ? undefined : isAccepted(policy.facts.get(fact), text, accepted, envelope);
    if (state === undefined) {
      const open = { outcome: "undecided", reason: reason ?? "unknown-word" } as const;
      const scope = code === "record/not-for-this-policy" ? "policy" : "check";
      const params = { fact, scope, ...(text === undefined ? {} : { found: text }) };
      remarks.push({ code: "record/scope-unknown", ...open, weight: REFER, pointer: pointTo(fact, policy), params });
    } else if (!state) remarks.push(refuse(code, fact, text ?? "", envelope.check, policy));
  }
}

function refuse(code: ScopeCode, fact: string, found: string, check: string, policy: PreparedPolicy): Remark {
  const outcome = { outcome: "undecided", reason: "not-for-this-policy" } as const;
  return { code, ...outcome, weight: REFER, pointer: pointTo(fact, policy), params: { fact, found, check } };
}

/** Where the record states a fact, as the policy declares it. */
function pointTo(fact: string, policy: PreparedPolicy): string {
  const { each, at = ["subject", fact] } = policy.facts.get(fact) ?? {};
  return `/${(each ?? at).map((key) => key.replaceAll("~", "~0").replaceAll("/", "~1")).join("/")}`;
}
