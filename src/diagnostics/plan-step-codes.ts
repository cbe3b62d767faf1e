import { defineCode } from "./define-code.js";
import { quoteWords, wantOneOf } from "./word-list.js";

/** Codes of checks and steps. */
export const PLAN_STEP_CODES = {
  "plan/bad-span": defineCode<{ found: string }>({
    severity: "error",
    message: ({ found }) => `\`${found}\` is not a calendar span`,
    wanted: () => "an ISO 8601 span of years, months, weeks or days, such as `P30D`, `P6M` or `P5Y`",
  }),
  "plan/duplicate-step": defineCode<{ step: string }>({
    severity: "error",
    message: ({ step }) => `the check has another step called \`${step}\``,
    mend: () => "give one of them another name",
  }),
  "plan/no-steps": defineCode<{ check: string }>({
    severity: "error",
    message: ({ check }) => `the check \`${check}\` has no steps`,
  }),
  "plan/no-order": defineCode<{ check: string }>({
    severity: "error",
    message: ({ check }) => `the check \`${check}\` does not say whether the order of its steps counts`,
    wanted: () => "`order: any`, `order: { listed-by: position }` or `order: { listed-by: at }`",
  }),
  "plan/step-before-itself": defineCode<{ steps: readonly string[] }>({
    severity: "error",
    message: ({ steps }) => `a step would have to come before itself: ${quoteWords(steps)}`,
    mend: () => "take one name out of `after`",
  }),
  "plan/after-later-step": defineCode<{ step: string; after: string }>({
    severity: "error",
    message: ({ step, after }) => `\`${step}\` is to come after \`${after}\`, which is listed behind it`,
    mend: ({ after, step }) => `list \`${after}\` before \`${step}\`, or state \`order: any\``,
  }),
  "plan/apart-without-each": defineCode({
    severity: "error",
    message: () => "`apart` compares the members of a list; the step is not asked of each",
    mend: () => "add `each: subject.cylinders`, or take `apart` out",
  }),
  "plan/needs-one-of": defineCode<{ keys: readonly string[]; given: readonly string[] }>({
    severity: "error",
    message: ({ keys, given }) =>
      given.length === 0
        ? `none of ${quoteWords(keys)} is stated`
        : `${quoteWords(given)} stand together; one of them is wanted`,
    wanted: ({ keys }) => wantOneOf(keys),
    mend: ({ given }) => (given.length === 0 ? undefined : "keep one of them"),
  }),
  "plan/nothing-to-compare": defineCode({
    severity: "error",
    message: () => "one place alone has nothing to be compared with",
    mend: () => "add places, or `equals`, or `differs-from`",
  }),
  "plan/duplicate-name": defineCode<{ thing: string; name: string }>({
    severity: "error",
    message: ({ thing, name }) => `the ${thing} \`${name}\` is named twice`,
    mend: () => "take one of them out, or give it another name",
  }),
  "plan/mild-defect": defineCode<{ defect: string; consequence: string }>({
    severity: "warning",
    message: ({ defect, consequence }) =>
      `the defect \`${defect}\` only weighs \`${consequence}\`: a record with it can still meet the policy`,
    mend: () => "let a defect weigh `refer` or more unless that is meant",
  }),
};
