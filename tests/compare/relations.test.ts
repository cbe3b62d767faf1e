import { describe, expect, it } from "vitest";
import { comparePlans } from "../../src/compare/index.js";
import { compilePolicy, evaluate, type Policy } from "../../src/index.js";
import type { Data } from "../laws/generated-step.js";

const basis = { kind: "common-practice" };

/** A policy of one check with these steps. */
function compile(steps: readonly Data[], others: Data = {}): Policy {
  const { policy, diagnostics } = compilePolicy(
    JSON.stringify({
      tenbar: 1,
      policy: { id: "lowmere/relations", title: "Relations", version: "1", status: "draft" },
      deference: "Local procedure stands above this policy.",
      checks: { daily: { order: "any", steps } },
      ...others,
    }),
  );
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  return policy;
}

function judge(policy: Policy, steps: readonly Data[]): unknown {
  const subject = { kind: "set", id: "S-014", marking: "B-014", removed: "B-013" };
  return evaluate(policy, { tenbar: 1, id: "r", check: "daily", at: "2026-04-12T07:04:00Z", subject, steps }).verdict;
}

const charge = (tolerance: Data): Data => ({ step: "charge", kind: "reading", quantity: "pressure", tolerance, basis });
const number = (own: Data): Data => ({ step: "number", kind: "match", ...own });
const read = (reading: string): Data => ({ step: "charge", reading });
const see = (seen: Data): Data => ({ step: "number", seen });

const harness: Data = { step: "harness", kind: "confirm" };
const torch: Data = { step: "torch", kind: "confirm" };
const mildHarness: Data = { ...harness, defects: { torn: { consequence: "note" } } };
const adopted = [
  {
    id: "harness-2026",
    step: "daily/harness",
    omit: true,
    from: "2026-04-01",
    review: "2026-12-31",
    order: "TO 26/11",
    by: "Station officer operations",
    reason: "New harnesses on trial",
  },
];

/** What looks like more being asked, with a record that comes off better for it. */
const BOTH_WAYS: readonly {
  readonly name: string;
  readonly parent: Policy;
  readonly child: Policy;
  readonly steps: readonly Data[];
  readonly before: string;
  readonly after: string;
}[] = [
  {
    name: "a caution band that needs a fact is added",
    parent: compile([charge({ accept: { "at-most": "300 bar" } })]),
    child: compile([charge({ accept: { "at-most": "300 bar" }, caution: { above: "95 % of rated-pressure" } })]),
    steps: [read("320 bar")],
    before: "withdraw",
    after: "refer",
  },
  {
    name: "a caution band that needs a fact is dropped",
    parent: compile([charge({ accept: { "at-most": "300 bar" }, caution: { above: "95 % of rated-pressure" } })]),
    child: compile([charge({ accept: { "at-most": "300 bar" } })]),
    steps: [read("280 bar")],
    before: "refer",
    after: "meets",
  },
  {
    name: "a limit that needs a fact is added on the other side",
    parent: compile([charge({ accept: { "at-most": "300 bar" } })]),
    child: compile([charge({ accept: { "at-most": "300 bar", "at-least": "80 % of rated-pressure" } })]),
    steps: [read("320 bar")],
    before: "withdraw",
    after: "refer",
  },
  {
    name: "a place is added where blanks are ignored",
    parent: compile([number({ places: ["back", "mask"], ignore: ["blanks"] })]),
    child: compile([number({ places: ["back", "mask", "tally"], ignore: ["blanks"] })]),
    steps: [see({ back: "B-014", mask: "B-014", tally: "B- 014" })],
    before: "refer",
    after: "meets",
  },
  {
    name: "less is ignored beside a text that is to differ",
    parent: compile([number({ places: ["back", "mask"], "differs-from": "subject.removed", ignore: ["case"] })]),
    child: compile([number({ places: ["back", "mask"], "differs-from": "subject.removed" })]),
    steps: [see({ back: "b-013", mask: "b-013" })],
    before: "withdraw",
    after: "meets",
  },
  {
    name: "a step is added where the only other one has a mild defect",
    parent: compile([mildHarness]),
    child: compile([mildHarness, torch]),
    steps: [
      { step: "harness", defect: "torn" },
      { step: "torch", result: "satisfactory" },
    ],
    before: "refer",
    after: "meets",
  },
  {
    name: "a step is added where the only other one is left out under an adoption",
    parent: compile([harness], { adopted }),
    child: compile([harness, torch], { adopted }),
    steps: [
      { step: "harness", result: "satisfactory" },
      { step: "torch", result: "satisfactory" },
    ],
    before: "refer",
    after: "meets",
  },
];

const both = { above: "200 bar", "at-least": "80 % of rated-pressure" };

const OTHERS: readonly (readonly [string, Policy, Policy, readonly string[]])[] = [
  [
    "a bar and a share on one side, unchanged",
    compile([charge({ accept: both })]),
    compile([charge({ accept: both })]),
    [],
  ],
  [
    "a bar and a share on one side, of which one moves inwards",
    compile([charge({ accept: both })]),
    compile([charge({ accept: { ...both, "at-least": "85 % of rated-pressure" } })]),
    ["tighter"],
  ],
  [
    "a bar and a share on one side, of which one moves outwards",
    compile([charge({ accept: both })]),
    compile([charge({ accept: { ...both, above: "190 bar" } })]),
    ["looser"],
  ],
  [
    "a bar and a share on one side, which move either way",
    compile([charge({ accept: both })]),
    compile([charge({ accept: { above: "210 bar", "at-least": "75 % of rated-pressure" } })]),
    ["cannot-compare"],
  ],
  [
    "a caution band without a fact is added",
    compile([charge({ accept: { "at-most": "300 bar" } })]),
    compile([charge({ accept: { "at-most": "300 bar" }, caution: { above: "290 bar" } })]),
    [],
  ],
  [
    "a place is added where nothing is ignored",
    compile([number({ places: ["back", "mask"] })]),
    compile([number({ places: ["back", "mask", "tally"] })]),
    ["tighter"],
  ],
  [
    "a place is added beside one with a former name",
    compile([number({ places: ["back", { place: "mask", formerly: ["face"] }] })]),
    compile([number({ places: ["back", { place: "mask", formerly: ["face"] }, "tally"] })]),
    ["tighter"],
  ],
  [
    "less is ignored where no text is to differ",
    compile([number({ places: ["back", "mask"], ignore: ["case"] })]),
    compile([number({ places: ["back", "mask"] })]),
    ["tighter"],
  ],
  [
    "a step is added beside one whose defects matter",
    compile([{ ...harness, defects: { torn: { consequence: "refer" } } }]),
    compile([{ ...harness, defects: { torn: { consequence: "refer" } } }, torch]),
    ["tighter"],
  ],
];

describe("relations", () => {
  it.each(BOTH_WAYS)("cannot compare: $name", ({ parent, child, steps, before, after }) => {
    expect([judge(parent, steps), judge(child, steps)]).toEqual([before, after]);
    const relations = comparePlans(parent.plan, child.plan).map(({ relation }) => relation);
    expect(relations).toContain("cannot-compare");
  });

  it.each(OTHERS)("%s", (_name, parent, child, wanted) => {
    expect(comparePlans(parent.plan, child.plan).map(({ relation }) => relation)).toEqual(wanted);
  });
});
