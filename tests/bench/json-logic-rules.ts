import { DIVISION, FULL_ALARM, LEAK, LINE, type Limits, MASK_SEAL, PRE_ALARM, START, WHISTLE } from "./hand-steps.js";

/** A rule in JsonLogic notation. */
export type Rule = { readonly [operator: string]: unknown } | string;

const take = (name: string): Rule => ({ var: name });
const equals = (name: string, value: unknown): Rule => ({ "===": [take(name), value] });
const isNull = (name: string) => equals(name, null);

/** Nothing better than undecided while `open` is true. */
function unless(open: string, rule: Rule): Rule {
  return { if: [take(open), { if: [{ "===": [rule, "outside"] }, "outside", "undecided"] }, rule] };
}

function whenFitted(rule: Rule): Rule {
  const isLeftOut = { and: [equals("fitted", false), { "!": take("evident") }] };
  return { if: [isLeftOut, "not-applicable", unless("fittedOpen", rule)] };
}

const CONFIRM: Rule = {
  if: [
    { or: [{ "!==": [take("defect"), null] }, equals("result", "defect")] },
    "outside",
    equals("result", "satisfactory"),
    "within",
    "undecided",
  ],
};

const MATCH: Rule = {
  if: [{ ">": [{ distinct: take("texts") }, 1] }, "outside", take("gap"), "undecided", "within"],
};

function judgeValue(least: number | Rule, most: number | undefined, cautionBelow?: Rule): Rule {
  const low = { "<": [take("value"), least] };
  const isOutside = most === undefined ? low : { or: [low, { ">": [take("value"), most] }] };
  const caution = cautionBelow === undefined ? [] : [{ "<": [take("value"), cautionBelow] }, "caution"];
  return {
    if: [
      equals("occurred", false),
      "outside",
      isNull("value"),
      "undecided",
      isOutside,
      "outside",
      take("doubt"),
      "undecided",
      ...caution,
      "within",
    ],
  };
}

const judgeLimits = ({ least, most }: Limits) => judgeValue(least, Number.isFinite(most) ? most : undefined);

const HOLD_START: Rule = {
  if: [
    isNull("start"),
    "undecided",
    { "<": [take("start"), START.least] },
    "outside",
    take("startDoubt"),
    "undecided",
    "within",
  ],
};

function judgeHold({ most, cautionAbove, lasting }: typeof LEAK): readonly Rule[] {
  const drop = { "-": [take("start"), take("end")] };
  const held: Rule = { if: [isNull("held"), "undecided", { "<": [take("held"), lasting] }, "outside", "within"] };
  const proves = [{ "<": [take("start"), START.least] }, isNull("held"), { "<": [take("held"), lasting] }];
  const caution = Number.isFinite(cautionAbove) ? [{ ">": [drop, cautionAbove] }, "caution"] : [];
  const change: Rule = {
    if: [
      { or: [isNull("start"), isNull("end")] },
      "undecided",
      { ">": [drop, most] },
      "outside",
      { or: [take("startDoubt"), take("endDoubt"), { "<": [drop, -DIVISION] }, ...proves] },
      "undecided",
      ...caution,
      "within",
    ],
  };
  return [HOLD_START, held, change];
}

const OLD = { "<": [{ "+": [take("day"), 30] }, take("today")] };

/** One rule for each requirement of the daily policy; each sees the figures of its own entry. */
export const RULES = {
  competence: { if: [isNull("competence"), "undecided", equals("competence", "wearer"), "within", "outside"] },
  order: {
    if: [
      { "<": [take("evident"), 2] },
      "not-applicable",
      take("broken"),
      "outside",
      take("open"),
      "undecided",
      "within",
    ],
  },
  monthly: {
    if: [isNull("day"), "undecided", { ">": [take("day"), take("today")] }, "undecided", OLD, "outside", "within"],
  },
  expiry: { if: [isNull("day"), "undecided", { "<": [take("day"), take("today")] }, "outside", "within"] },
  match: MATCH,
  confirm: CONFIRM,
  confirmFitted: whenFitted(CONFIRM),
  line: whenFitted(judgeLimits(LINE)),
  charge: {
    if: [
      isNull("least"),
      { if: [equals("occurred", false), "outside", "undecided"] },
      judgeValue(take("least"), undefined, take("cautionBelow")),
    ],
  },
  apart: {
    if: [
      equals("count", 1),
      { if: [take("listed"), "not-applicable", "undecided"] },
      { ">": [take("apart"), take("most")] },
      "outside",
      take("doubt"),
      "undecided",
      "within",
    ],
  },
  leak: judgeHold(LEAK),
  whistle: judgeLimits(WHISTLE),
  maskSeal: judgeHold(MASK_SEAL),
  preAlarm: whenFitted(judgeLimits(PRE_ALARM)),
  fullAlarm: whenFitted(judgeLimits(FULL_ALARM)),
} as const;

/** The shape of a record; what a step states is left to the rules, which must see what is wrong with it. */
export const SHAPE = {
  type: "object",
  required: ["tenbar", "id", "check", "at", "subject", "steps"],
  properties: {
    tenbar: { const: 1 },
    id: { type: "string", pattern: "\\S" },
    check: { const: "daily" },
    at: {
      type: "string",
      pattern:
        "^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])([Tt]([01]\\d|2[0-3]):[0-5]\\d(:[0-5]\\d(\\.\\d{1,9})?)?([Zz]|[+-]([01]\\d|2[0-3]):[0-5]\\d)?)?$",
    },
    subject: {
      type: "object",
      required: ["kind", "id"],
      properties: { kind: { const: "set" }, id: { type: "string", pattern: "\\S" } },
    },
    steps: {
      type: "array",
      maxItems: 10_000,
      items: { type: "object", required: ["step"], properties: { step: { type: "string", pattern: "\\S" } } },
    },
  },
} as const;
