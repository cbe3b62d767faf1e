import { defineCode } from "./define-code.js";
import { PLAN_LIMIT_CODES } from "./plan-limit-codes.js";
import { PLAN_STEP_CODES } from "./plan-step-codes.js";
import { wantOneOf } from "./word-list.js";

/** Codes of what a policy means: names, units, limits, scopes. */
export const PLAN_CODES = {
  ...PLAN_LIMIT_CODES,
  ...PLAN_STEP_CODES,
  "plan/unknown-name": defineCode<{ thing: string; name: string; known: readonly string[] }>({
    severity: "error",
    message: ({ thing, name }) => `no ${thing} is called \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ thing, nearest }) =>
      nearest === undefined ? `declare the ${thing}, or name another` : `write \`${nearest}\``,
  }),
  "plan/not-yet": defineCode<{ option: string }>({
    severity: "error",
    message: ({ option }) => `\`${option}\` is part of the language and is not judged by this version`,
    mend: ({ option }) => `leave \`${option}\` out; nothing of it would be judged`,
  }),
  "plan/bad-date": defineCode<{ found: string }>({
    severity: "error",
    message: ({ found }) => `\`${found}\` is not a day of the calendar`,
    wanted: () => "a date as year-month-day, such as `2026-04-01`",
  }),
  "plan/dates-swapped": defineCode<{ from: string; to: string }>({
    severity: "error",
    message: ({ from, to }) => `\`from\` (${from}) lies behind \`to\` (${to})`,
    mend: () => "swap the two dates",
  }),
  "plan/review-passed": defineCode<{ review: string; asOf: string }>({
    severity: "warning",
    message: ({ review, asOf }) => `the review date ${review} has passed on ${asOf}`,
    mend: () => "review the policy and set a new date",
  }),
  "plan/no-checks": defineCode({ severity: "error", message: () => "the policy has no checks" }),
  "plan/no-deference": defineCode({
    severity: "error",
    message: () => "the policy does not say what stands above it",
    mend: () => "add `deference`, a sentence that every assessment carries",
  }),
  "plan/shadowed-name": defineCode<{ thing: string; name: string }>({
    severity: "error",
    message: ({ thing, name }) => `the ${thing} \`${name}\` is built in and cannot be declared again`,
    mend: () => "give it another name",
  }),
  "plan/take-without-size": defineCode<{ take: string; kind: string }>({
    severity: "error",
    message: ({ take, kind }) => `\`take: ${take}\` needs values that have a size; the fact is a ${kind}`,
    mend: () => "write `take: only`",
  }),
  "plan/adoption-without-end": defineCode<{ adoption: string; given: readonly string[] }>({
    severity: "error",
    message: ({ adoption, given }) =>
      given.length === 0
        ? `the adoption \`${adoption}\` does not say when it ends or is reviewed`
        : `the adoption \`${adoption}\` states both \`until\` and \`review\``,
    mend: () => "state `until`, its last day, or for a lasting one `review`",
  }),
  "plan/covering-cannot-lapse": defineCode<{ adoption: string; key: string }>({
    severity: "error",
    message: ({ adoption, key }) =>
      `\`${key}\` has no effect: \`${adoption}\` only covers a departure that stands in the policy for every record and every day`,
    mend: () =>
      "leave the parent's limit and state the departure here as `accept`, `instead` or `omit`; or state `review` for a lasting one",
  }),
  "plan/which-requirement": defineCode<{ known: readonly string[] }>({
    severity: "error",
    message: () => "the step has several requirements with limits, or none; it is not clear which `accept` is for",
    wanted: ({ known }) => wantOneOf(known),
    mend: () => "add `requirement`",
  }),
  "plan/unused": defineCode<{ thing: string; name: string }>({
    severity: "warning",
    message: ({ thing, name }) => `nothing uses the ${thing} \`${name}\``,
    mend: () => "take it out, or name it in a step",
  }),
};
