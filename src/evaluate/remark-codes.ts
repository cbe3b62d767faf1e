/** What each remark says. Params are texts of the record or the policy. */
export const REMARKS = {
  "record/unknown-check": ({ check }: Params) => `the policy has no check \`${check}\``,
  "record/not-for-this-policy": ({ fact, found }: Params) =>
    `the policy is not for a record whose ${fact} is \`${found}\``,
  "record/not-for-this-check": ({ fact, found, check }: Params) =>
    `the check \`${check}\` is not for a record whose ${fact} is \`${found}\``,
  "record/scope-unknown": ({ fact, scope }: Params) =>
    `the record does not say its ${fact}, so whether this ${scope} is for it stays open`,
  "record/nothing-judged": () => "nothing that matters could be judged",
  "record/outside-effective": ({ date, from, to }: Params) =>
    `the record of ${date} lies outside the policy's time in force (${from} to ${to})`,
  "record/no-digest": () => "the record has no canonical form, so it has no digest",
  "record/unknown-key": ({ key }: Params) => `the key \`${key}\` is not known and was not judged`,
  "record/unreadable-value": ({ key }: Params) => `what stands under \`${key}\` cannot be read`,
  "record/unknown-step": ({ step }: Params) => `the check has no step \`${step}\`; what it records was not judged`,
  "record/not-attestable": ({ step }: Params) => `\`${step}\` may not be attested; it needs its own evidence`,
  "step/defect": ({ defect }: Params) => `the defect \`${defect}\` is recorded here`,
  "step/not-done": () => "the step is recorded as not done",
  "step/unknown-result": ({ recorded }: Params) =>
    `the result \`${recorded}\` is not one of the words that are understood`,
  "step/unused-evidence": ({ key }: Params) => `\`${key}\` is no evidence for a step of this kind and was not judged`,
  "step/trace-not-judged": () => "a trace is recorded; traces are not judged by this version",
  "step/recorded-though-not-fitted": ({ fitting }: Params) =>
    `\`${fitting}\` is recorded as not fitted, yet evidence is recorded for it`,
  "step/adopted": ({ adoption, order, until, without }: Params) =>
    `judged under the adoption \`${adoption}\` (${order}, until ${until}); without it: ${without}`,
  "step/not-asked": ({ step }: Params) => `\`${step}\` is asked only while an adoption applies, and none does`,
  "step/finer-than-division": () => "the instrument cannot show this value; it lies between two divisions",
  "step/unknown-place": ({ place }: Params) => `the step does not ask for the place \`${place}\``,
  "step/more-likely-outside": ({ observed, accept, confidence }: Params) =>
    `\`${observed}\` is accepted as read (${accept}), yet the true value conforms with a probability of only ${confidence}`,
  "hold/counted-as-no-change": () =>
    "the value moved the other way by no more than one division and counts as unchanged",
} as const satisfies Readonly<Record<string, (params: Params) => string>>;

type Params = Readonly<Record<string, string>>;

export type RemarkCode = keyof typeof REMARKS;

export function isRemarkCode(code: string): code is RemarkCode {
  return Object.hasOwn(REMARKS, code);
}
