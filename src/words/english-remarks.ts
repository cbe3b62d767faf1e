import type { RemarkTexts } from "./remark-shapes.js";

/** What each remark says. Params are texts of the record or the policy. */
export const ENGLISH_REMARKS: RemarkTexts = {
  "record/unknown-check": ({ check }) => `the policy has no check \`${check}\``,
  "record/not-for-this-policy": ({ fact, found }) => `the policy is not for a record whose ${fact} is \`${found}\``,
  "record/not-for-this-check": ({ fact, found, check }) =>
    `the check \`${check}\` is not for a record whose ${fact} is \`${found}\``,
  "record/scope-unknown": ({ fact, scope, found }) => {
    const cause =
      found === ""
        ? `the record does not say its ${fact}`
        : `the record says \`${found}\` of its ${fact}, which is a word of the ${scope} written another way`;
    return `${cause}, so whether this ${scope} is for it stays open`;
  },
  "record/nothing-judged": () => "nothing that matters could be judged",
  "record/outside-effective": ({ date, from, to }) =>
    `the record of ${date} lies outside the policy's time in force (${from} to ${to})`,
  "record/no-digest": () => "the record has no canonical form, so it has no digest",
  "record/unknown-key": ({ key }) => `the key \`${key}\` is not known and was not judged`,
  "record/unreadable-value": ({ key }) => `what stands under \`${key}\` cannot be read`,
  "record/unknown-step": ({ step }) => `the check has no step \`${step}\`; what it records was not judged`,
  "record/not-attestable": ({ step }) => `\`${step}\` may not be attested; it needs its own evidence`,
  "step/defect": ({ defect }) => `the defect \`${defect}\` is recorded here`,
  "step/not-done": () => "the step is recorded as not done",
  "step/unknown-result": ({ recorded }) => `the result \`${recorded}\` is not one of the words that are understood`,
  "step/misspelt-key": ({ key, nearest }) => `the key \`${key}\` was not judged; \`${nearest}\` was probably meant`,
  "step/unused-evidence": ({ key }) => `\`${key}\` is no evidence for a step of this kind and was not judged`,
  "step/trace-not-judged": () => "a trace is recorded; traces are not judged by this version",
  "step/recorded-though-not-fitted": ({ fitting }) =>
    `\`${fitting}\` is recorded as not fitted, yet evidence is recorded for it`,
  "step/adopted": sayAdopted,
  "interval/adopted": sayAdopted,
  "step/not-asked": ({ step }) => `\`${step}\` is asked only while an adoption applies, and none does`,
  "step/finer-than-division": () => "the instrument cannot show this value; it lies between two divisions",
  "step/unknown-place": ({ place }) => `the step does not ask for the place \`${place}\``,
  "step/more-likely-outside": ({ observed, accept, confidence }) =>
    `\`${observed}\` is accepted as read (${accept}), yet the true value conforms with a probability of only ${confidence}`,
  "hold/counted-as-no-change": () =>
    "the value moved the other way by no more than one division and counts as unchanged",
};

function sayAdopted({ adoption, order, until, without }: Parameters<RemarkTexts["step/adopted"]>[0]): string {
  return `judged under the adoption \`${adoption}\` (${order}, until ${until}); without it: ${without}`;
}
