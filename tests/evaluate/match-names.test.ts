import { expect, it } from "vitest";
import { compilePolicy, evaluate } from "../../src/index.js";

const policyText = `
tenbar: 1
policy: { id: lowmere/names, title: Names, version: "1", status: draft }
deference: Local procedure stands above this policy.
checks:
  daily:
    order: any
    steps:
      - { step: number, kind: match, places: [back, { place: mask, formerly: [face, visor] }] }
`;

it.each([
  ["under its name alone", { back: "014", mask: "014" }, "within", "back 014, mask 014"],
  ["under a former name alone", { back: "014", face: "014" }, "within", "back 014, mask 014"],
  ["under both, the same", { back: "014", mask: "014", face: "014" }, "within", "back 014, mask 014, face 014"],
  ["under both, not the same", { back: "014", mask: "014", face: "099" }, "outside", "back 014, mask 014, face 099"],
  ["under two former names", { back: "014", face: "014", visor: "099" }, "outside", "back 014, mask 014, visor 099"],
  ["under both, one of them no text", { back: "014", mask: "014", face: 14 }, "undecided", "back 014, mask 014"],
])("holds a place to all that is recorded of it: %s", (_name, seen, outcome, observed) => {
  const { policy } = compilePolicy(policyText);
  if (policy === undefined) throw new Error("the policy is refused");
  const subject = { kind: "set", id: "S-014" };
  const record = { tenbar: 1, id: "r", check: "daily", at: "2026-04-12T07:04:00Z", subject };
  const { results } = evaluate(policy, { ...record, steps: [{ step: "number", seen }] });
  expect(results).toMatchObject([{ requirement: "match", outcome, observed }]);
});

it.each([
  [{ back: "-", mask: "--" }, "undecided", "missing"],
  [{ back: " - ", mask: "- -" }, "undecided", "missing"],
  [{ back: "-", mask: "014" }, "outside", undefined],
  [{ back: "0-14", mask: "01 4" }, "within", undefined],
])("finds no number where all is ignored: %o", (seen, outcome, reason) => {
  const { policy } = compilePolicy(policyText.replace("kind: match,", "kind: match, ignore: [hyphens, blanks],"));
  if (policy === undefined) throw new Error("the policy is refused");
  const subject = { kind: "set", id: "S-014" };
  const record = { tenbar: 1, id: "r", check: "daily", at: "2026-04-12T07:04:00Z", subject };
  const [result] = evaluate(policy, { ...record, steps: [{ step: "number", seen }] }).results;
  expect([result?.outcome, result?.reason]).toEqual([outcome, reason]);
});
