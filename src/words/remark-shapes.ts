/** What each remark speaks of. */
interface RemarkShapes {
  readonly "record/unknown-check": "check";
  readonly "record/not-for-this-policy": "fact" | "found";
  readonly "record/not-for-this-check": "fact" | "found" | "check";
  readonly "record/scope-unknown": "fact" | "scope" | "found";
  readonly "record/nothing-judged": never;
  readonly "record/outside-effective": "date" | "from" | "to";
  readonly "record/no-digest": never;
  readonly "record/unknown-key": "key";
  readonly "record/unreadable-value": "key";
  readonly "record/unknown-step": "step";
  readonly "record/not-attestable": "step";
  readonly "step/defect": "defect";
  readonly "step/not-done": never;
  readonly "step/unknown-result": "recorded";
  readonly "step/misspelt-key": "key" | "nearest";
  readonly "step/unused-evidence": "key";
  readonly "step/trace-not-judged": never;
  readonly "step/recorded-though-not-fitted": "fitting";
  readonly "step/adopted": "adoption" | "order" | "until" | "without";
  readonly "interval/adopted": "adoption" | "order" | "until" | "without";
  readonly "step/not-asked": "step";
  readonly "step/finer-than-division": never;
  readonly "step/unknown-place": "place";
  readonly "step/more-likely-outside": "observed" | "accept" | "confidence";
  readonly "hold/counted-as-no-change": never;
}

/** A stable word for one kind of remark. */
export type RemarkCode = keyof RemarkShapes;

type RemarkParams = Readonly<Record<RemarkShapes[RemarkCode], string>>;

/** One sentence a remark, which can only speak of what the remark has. */
export type RemarkTexts = {
  readonly [C in RemarkCode]: (params: Readonly<Record<RemarkShapes[C], string>>) => string;
};

const NOTHING: RemarkParams = {
  check: "",
  fact: "",
  found: "",
  scope: "",
  date: "",
  from: "",
  to: "",
  key: "",
  nearest: "",
  step: "",
  defect: "",
  recorded: "",
  fitting: "",
  adoption: "",
  order: "",
  until: "",
  without: "",
  place: "",
  observed: "",
  accept: "",
  confidence: "",
};

/** The sentence of one remark. */
export function sayRemark(texts: RemarkTexts, code: RemarkCode, params: Readonly<Record<string, string>>): string {
  return texts[code]({ ...NOTHING, ...params });
}
