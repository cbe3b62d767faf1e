import type { DiagnosticTexts, PlanShapes } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

/** What a policy means: names, dates, adoptions. */
export const ENGLISH_PLAN_TEXTS = {
  "plan/unknown-name": {
    message: ({ thing, name }) => `no ${thing} is called \`${name}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ thing, nearest }) =>
      nearest === undefined ? `declare the ${thing}, or name another` : `write \`${nearest}\``,
  },
  "plan/not-yet": {
    message: ({ option, of }) => `${nameOption(option, of)} is part of the language and is not judged by this version`,
    mend: ({ option, of }) => `leave ${nameOption(option, of)} out; nothing of it would be judged`,
  },
  "plan/bad-date": {
    message: ({ found }) => `\`${found}\` is not a day of the calendar`,
    wanted: () => "a date as year-month-day, such as `2026-04-01`",
  },
  "plan/dates-swapped": {
    message: ({ from, to, key }) => `\`from\` (${from}) is later than \`${key}\` (${to})`,
    mend: () => "swap the two dates",
  },
  "plan/review-passed": {
    message: ({ review, asOf }) => `the review date ${review} has passed on ${asOf}`,
    mend: () => "review the policy and set a new date",
  },
  "plan/no-checks": {
    message: () => "the policy has no checks",
  },
  "plan/no-deference": {
    message: () => "the policy does not say what stands above it",
    mend: () => "add `deference`, a sentence that every assessment carries",
  },
  "plan/shadowed-name": {
    message: ({ thing, name }) => `the ${thing} \`${name}\` is built in and cannot be declared again`,
    mend: () => "give it another name",
  },
  "plan/take-without-size": {
    message: ({ take, kind }) => `\`take: ${take}\` needs values that have a size; the fact is a ${kind}`,
    mend: () => "write `take: only`",
  },
  "plan/adoption-without-end": {
    message: ({ adoption, given }) =>
      given.length === 0
        ? `the adoption \`${adoption}\` does not say when it ends or is reviewed`
        : `the adoption \`${adoption}\` states both \`until\` and \`review\``,
    mend: () => "state `until`, its last day, or for a lasting one `review`",
  },
  "plan/adoptions-meet": {
    message: ({ adoption, other, requirement }) =>
      `\`${adoption}\` and \`${other}\` can both put limits on \`${requirement}\`; where both apply, the worse outcome stands`,
    mend: () => "end one before the other begins, or give them scopes that do not meet",
  },
  "plan/words-alike": {
    message: ({ fact, word, other }) =>
      `\`${word}\` and \`${other}\` are one word of \`${fact}\`, written two ways; a record that states one leaves open what asks for the other`,
    mend: () => "write the word as records state it, everywhere",
  },
  "plan/covering-cannot-lapse": {
    message: ({ adoption, key }) =>
      `\`${key}\` has no effect: what \`${adoption}\` covers has nothing of the parent to fall back on`,
    mend: () =>
      "leave what the parent states and write the departure as `accept`, `instead` or `omit`; or state `review` for a lasting one, with a `from` not after the day on which the policy is `effective`",
  },
  "plan/adoption-of-interval": {
    message: ({ key }) => `an interval has no limits or steps that \`${key}\` could stand for`,
    mend: ({ key }) =>
      `leave \`${key}\` out; write \`omit: true\`, or state the interval here with another \`every\`, which the adoption then covers`,
  },
  "plan/which-requirement": {
    message: () => "the step has several requirements with limits, or none; it is not clear which `accept` is for",
    wanted: ({ known }) => wantOneOf(known),
    mend: () => "add `requirement`",
  },
  "plan/unused": {
    message: ({ thing, name }) => `nothing uses the ${thing} \`${name}\``,
    mend: ({ nearest }) =>
      nearest === undefined
        ? "take it out, or name it in a step"
        : `the parent's \`${nearest}\` stands as it was; write \`${nearest}\` to change it, or name yours in a step`,
  },
} satisfies Pick<DiagnosticTexts, keyof PlanShapes>;

function nameOption(option: string, of: "unnamed-interval" | undefined): string {
  return of === undefined ? `\`${option}\`` : `\`${option}\` of an interval that no check names, \`interval\``;
}
