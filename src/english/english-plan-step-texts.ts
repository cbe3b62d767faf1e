import { type DiagnosticTexts, type PlanStepShapes, quoteWords } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

/** Checks and steps. */
export const ENGLISH_PLAN_STEP_TEXTS = {
  "plan/bad-span": {
    message: ({ found }) => `\`${found}\` is not a calendar span`,
    wanted: () => "an ISO 8601 span of years, months, weeks or days, such as `P30D`, `P6M` or `P5Y`",
  },
  "plan/duplicate-step": {
    message: ({ step }) => `the check has another step called \`${step}\``,
    mend: () => "give one of them another name",
  },
  "plan/no-steps": {
    message: ({ check }) => `the check \`${check}\` has no steps`,
  },
  "plan/no-order": {
    message: ({ check }) => `the check \`${check}\` does not say whether the order of its steps counts`,
    wanted: () => "`order: any`, `order: { listed-by: position }` or `order: { listed-by: at }`",
  },
  "plan/step-before-itself": {
    message: ({ steps, key }) =>
      key === undefined
        ? `a step would have to come before itself: ${quoteWords(steps)}`
        : `a step cannot stand ${key === "before" ? "before" : "after"} itself: ${quoteWords(steps)}`,
    mend: ({ key }) =>
      key === undefined ? "take one name out of `after`" : `name another step in \`${key}\`, or take it out`,
  },
  "plan/after-later-step": {
    message: ({ step, after }) => `\`${step}\` is to come after \`${after}\`, which is listed after it`,
    mend: ({ after, step }) => `list \`${after}\` before \`${step}\`, or state \`order: any\``,
  },
  "plan/apart-without-each": {
    message: () => "`apart` compares the members of a list; the step is not asked of each",
    mend: () => "add `each: subject.cylinders`, or take `apart` out",
  },
  "plan/needs-one-of": {
    message: ({ keys, given }) =>
      given.length === 0
        ? `none of ${quoteWords(keys)} is stated`
        : `${quoteWords(given)} stand together; one of them is wanted`,
    wanted: ({ keys }) => wantOneOf(keys),
    mend: ({ given }) => (given.length === 0 ? undefined : "keep one of them"),
  },
  "plan/nothing-to-compare": {
    message: () => "one place alone has nothing to be compared with",
    mend: () => "add places, or `equals`, or `differs-from`",
  },
  "plan/duplicate-name": {
    message: ({ thing, name }) => `the ${thing} \`${name}\` is named twice`,
    mend: () => "take one of them out, or give it another name",
  },
  "plan/mild-defect": {
    message: ({ defect, consequence }) =>
      `the defect \`${defect}\` only weighs \`${consequence}\`: a record with it can still meet the policy`,
    mend: () => "let a defect weigh `refer` or more unless that is meant",
  },
} satisfies Pick<DiagnosticTexts, keyof PlanStepShapes>;
