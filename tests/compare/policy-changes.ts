import { pickFrom } from "../generators/picks.js";
import { type Change, CONSEQUENCES, change, changeRule, setAt } from "./change.js";
import { RULE_TERMS } from "./generated-parent.js";

const ROLES = [["front-line"], ["spare"], ["front-line", "spare"], ["spare", "training"]] as const;
const SCOPES = [undefined, ...ROLES.map((role) => ({ role }))];
const BASIS = { kind: "local", order: "LO 14" };

const switchRule: Change = (policy, picks) => {
  const rule = { rule: "seen", require: pickFrom(RULE_TERMS, picks), consequence: "withdraw", basis: BASIS };
  const isThere = Array.isArray(policy.rules) && policy.rules.length > 0;
  return change(policy, ["rules"], isThere ? undefined : [rule]);
};

const changeInstrument: Change = (policy, picks) => {
  const [path, values] = pickFrom<readonly [readonly string[], readonly unknown[]]>(
    [
      [
        ["dial", "division"],
        ["10 bar", "1 bar", undefined],
      ],
      [
        ["dial", "rounding"],
        ["down", "up", undefined],
      ],
      [
        ["dial", "max-error"],
        ["10 bar", "1 bar", undefined],
      ],
      [
        ["dial", "errors"],
        ["shared", undefined],
      ],
      [
        ["dial", "range"],
        [["0 bar", "400 bar"], ["0 bar", "279 bar"], undefined],
      ],
      [
        ["digital", "range"],
        [["0 bar", "275 bar"], undefined],
      ],
      [
        ["set-gauge", "one-of"],
        [["dial"], ["digital"], ["digital", "dial"]],
      ],
      [
        ["watch", "range"],
        [["0 s", "29 s"], ["0 s", "60 s"], undefined],
      ],
    ],
    picks,
  ) ?? [[], []];
  return change(policy, ["instruments", ...path], pickFrom(values, picks));
};

const removeCheck: Change = (policy) => change(policy, ["checks", "after-use"], undefined);
const addCheck: Change = (policy) =>
  change(policy, ["checks", "weekly"], { order: "any", steps: [{ step: "clean", kind: "confirm" }] });

const interval = (key: string, values: readonly unknown[]): Change => {
  const changes = ["requalified", "serviced"].map((name) => setAt(["intervals", name, key], values));
  return (policy, picks) => pickFrom(changes, picks)?.(policy, picks);
};

export const POLICY_CHANGES: Readonly<Record<string, Change>> = {
  "the scope of the policy": setAt(["for"], [...SCOPES, { kind: "set" }, { kind: ["set", "old-set"] }]),
  "the scope of a check": setAt(["checks", "daily", "for"], SCOPES),
  "the subject of a check": setAt(
    ["checks", "daily", "subject"],
    [undefined, "set", { kind: "set", formerly: ["old-set"] }],
  ),
  "the former name of a check": setAt(["checks", "daily", "formerly"], [undefined, ["start-of-shift"]]),
  "the consequence of a check": setAt(["checks", "daily", "consequence"], CONSEQUENCES),
  "the competence": setAt(
    ["checks", "daily", "competence"],
    [undefined, "wearer", "technician", ["wearer", "technician"], ["technician", "wearer", "visitor"]],
  ),
  "the kind of order": setAt(["checks", "daily", "order"], ["any", { "listed-by": "position" }, { "listed-by": "at" }]),
  "which intervals a check names": setAt(
    ["checks", "daily", "intervals"],
    [undefined, ["requalified"], ["serviced"], ["serviced", "requalified"]],
  ),
  "the span of an interval": interval("every", ["P5Y", "P2Y", "P1Y", "P6M", "P12M", "P365D", "P360D", "P60M"]),
  "what an interval counts from": interval("counted", ["from-last", "from-first"]),
  "the date of an interval": interval("date", ["requalifiedOn", "manufacturedOn", "servicedOn"]),
  "the thing of an interval": interval("of", ["cylinder", "set"]),
  "the consequence of an interval": interval("consequence", CONSEQUENCES),
  "the scope of an interval": interval("for", SCOPES),
  "a rule is added or dropped": switchRule,
  "the condition of a rule": changeRule((rule, picks) => ({
    ...rule,
    when: pickFrom([undefined, ...RULE_TERMS], picks),
  })),
  "what a rule requires": changeRule((rule, picks) => ({ ...rule, require: pickFrom(RULE_TERMS, picks) })),
  "the consequence of a rule": changeRule((rule, picks) => ({ ...rule, consequence: pickFrom(CONSEQUENCES, picks) })),
  "the scope of a rule": changeRule((rule, picks) => ({ ...rule, for: pickFrom(SCOPES, picks) })),
  "an instrument": changeInstrument,
  "the words of a fact": setAt(
    ["facts", "role", "one-of"],
    [
      ["front-line", "spare", "training", "scrapped"],
      ["training", "front-line", "spare"],
    ],
  ),
  "where a fact stands": setAt(["facts", "shift", "at"], ["/local/shift", "/local/watch"]),
  "what a gap weighs": setAt(["undecided"], [undefined, "as-outside"]),
  "the time in force": setAt(["policy", "effective"], [undefined, { from: "2026-04-01" }, { to: "2026-04-12" }]),
  "a check is taken away": removeCheck,
  "a check is added": addCheck,
};
