// The published schema in the hands of a YAML language server, which editors run: what is underlined, shown and offered.
// Source of what a server is asked and answers: Language Server Protocol 3.17.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { CONSEQUENCES, STEP_KINDS } from "../../src/terms/index.js";
import { openEditor } from "./editor.js";

const POLICIES = "policies/common-practice";
const SHIPPED = [...readdirSync(POLICIES).map((file) => join(POLICIES, file)), "examples/lowmere/policy.yaml"];
const EVERY_KIND = "tests/editor/every-kind.yaml";
const TEXT = readFileSync(EVERY_KIND, "utf8");

const editor = await openEditor();
let complaints: string | undefined;
afterAll(async () => {
  complaints ??= await editor.close();
});

let count = 0;
/** Why: a server remembers a text by its path, so each trial has one of its own. */
const nextPath = (): string => {
  count += 1;
  return `tests/editor/trial-${count}.yaml`;
};

/** The text with one stretch replaced; the stretch must be there. */
function alter(from: string, to: string): string {
  if (!TEXT.includes(from)) throw new Error(`the text has no ${from}`);
  return TEXT.replace(from, () => to);
}

const findLine = (part: string): number => TEXT.slice(0, TEXT.indexOf(part)).split("\n").length;

describe("an editor", () => {
  it.concurrent.each(SHIPPED)("underlines nothing in %s", async (path) => {
    expect(await editor.diagnose(path, readFileSync(path, "utf8"))).toEqual([]);
  });

  it("underlines nothing in a policy with a step of every kind, which compiles", async () => {
    expect(await editor.diagnose(EVERY_KIND, TEXT)).toEqual([]);
    const { diagnostics } = compilePolicy(TEXT, { file: EVERY_KIND });
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  });
});

type Slip = readonly [what: string, from: string, to: string, message: string];

/** Slips of the pen; each is underlined once, where it was made, with these words among those of the server. */
const SLIPS: readonly Slip[] = [
  ["a misspelt key at the top", "tolerances:", "tolerence:", "tolerence is not allowed"],
  ["a misspelt key of a step", "when-fitted:", "when-fited:", "when-fited is not allowed"],
  ["a misspelt limit", "{ at-most: 20", "{ at-mots: 20", "at-mots is not allowed"],
  ["a key of another kind", "attestable:", "lasting:", "lasting is not allowed"],
  ["an unknown kind", "kind: timing", "kind: timeing", '"confirm", "match", "reading", "hold", "timing", "in-date"'],
  ["a kind not yet written", "kind: timing", "kind:", '"confirm", "match", "reading", "hold", "timing", "in-date"'],
  ["an unknown basis", "kind: local,", "kind: locla,", '"common-practice", "published", "manufacturer", "local"'],
  [
    "an unknown consequence",
    "consequence: withdraw",
    "consequence: widthdraw",
    '"note", "advise", "refer", "withdraw"',
  ],
  ["an unknown status", "status: local", "status: lokal", '"common-practice", "local", "draft"'],
  ["a limit without its unit", "at-least: 60 s", "at-least: 60.5", 'Expected "string | integer"'],
  ["a list in place of a name", "tolerance: charge", "tolerance: [charge]", 'Expected "string | object'],
  ["a text in place of a list", "after: [charge]", "after: charge", 'Expected "array"'],
  ["a number that lacks its quotes", '"2026.1"', "2026.1", 'Expected "string"'],
  ["yes in place of true", "attestable: true", "attestable: yes", 'Expected "boolean"'],
  ["a span that is none", "within: P30D", "within: 30 days", "does not match the pattern"],
  ["capitals in a name", "step: harness\n", "step: Harness\n", "does not match the pattern"],
  ["a capital in a name of a map", "  charge:\n", "  Charge:\n", "does not match the pattern"],
  ["limits without a bound", "{ at-least: 100 bar }", "{}", "fewer properties"],
];

describe("a slip of the pen", () => {
  it.concurrent.each(SLIPS)("is underlined once where it stands: %s", async (what, from, to, message) => {
    const problems = await editor.diagnose(nextPath(), alter(from, to));
    expect(problems, what).toEqual([{ line: findLine(from), message: expect.stringContaining(message) }]);
  });

  it("in a key that a step needs is told as the one key missing and the other not known", async () => {
    const problems = await editor.diagnose(nextPath(), alter("places:", "place:"));
    expect(problems).toEqual([
      { line: findLine("- step: set-number"), message: 'Missing property "places".' },
      { line: findLine("places:"), message: "Property place is not allowed." },
    ]);
  });

  it("in the key `kind` itself is told as a step without a kind", async () => {
    const problems = await editor.diagnose(nextPath(), alter("kind: hold", "knd: hold"));
    expect(problems).toEqual([{ line: findLine("- step: leak"), message: 'Missing property "kind".' }]);
  });

  it("of the wrong kind is blamed on the keys, not on the kind", async () => {
    const problems = await editor.diagnose(nextPath(), alter("kind: hold", "kind: confirm"));
    const keys = [
      "quantity: pressure\n        instrument: dial\n        start",
      "start",
      "lasting",
      "drop",
      "temperature",
    ];
    const expected = keys.map((key) => ({
      line: findLine(`        ${key}:`),
      message: `Property ${key.split(":")[0]} is not allowed.`,
    }));
    expect([...problems].sort((one, other) => one.line - other.line)).toEqual(expected);
  });
});

type Hovered = readonly [mark: string, help: RegExp];

const HOVERED: readonly Hovered[] = [
  ["tenbar: 1", /version of the policy language/],
  ["policy:", /Who issues it/],
  ["version:", /Always in quotes/],
  ["status: local", /shipped defaults/],
  ["effective:", /in force/],
  ["review: 2027-02-01", /looked over again/],
  ["deference:", /stands above this policy/],
  ["undecided:", /every gap weigh what a failure weighs/],
  ["facts:", /limits, scopes and rules/],
  ["one-of:", /values that the fact may have/],
  ["max-error:", /Largest error of the instrument/],
  ["errors:", /cancel in a drop/],
  ["tolerances:", /Limits by name/],
  ["consequence: withdraw", /a competent person decides/],
  ["basis:\n      kind: published", /published document states it/],
  ["cases:", /depend on declared facts/],
  ["caution:", /close to a limit/],
  ["at-least: 80", /this limit or more/],
  ["above: 90", /the limit itself is outside/],
  ["subject: set", /kind of subject that is checked/],
  ["competence: wearer", /Who may carry the check out/],
  ["order: {", /no default/],
  ["listed-by:", /how they are listed in the record/],
  ["kind: confirm", /somebody looks or tries/],
  ["ask: Straps", /person at the set reads/],
  ["attestable:", /vouch/],
  ["defects:", /weigh otherwise/],
  ["places:", /read off/],
  ["equals:", /must equal/],
  ["ignore:", /Leading zeros always count/],
  ["each: subject", /once for each member/],
  ["quantity: pressure\n        instrument", /which units are understood/],
  ["instrument: dial", /instrument of this policy/],
  ["tolerance: charge", /accepted of the reading/],
  ["apart:", /highest less lowest/],
  ["start:", /prove anything/],
  ["lasting:", /How long the hold must last/],
  ["drop:", /may fall over the hold/],
  ["temperature: ignored", /compares start and end/],
  ["after:", /must come before this one/],
  ["when-fitted:", /an absent name is undecided/],
  ["from-event:", /starts the time/],
  ["tolerance: { accept", /accepted of the time/],
  ["within:", /may lie back/],
  ["counted:", /of the last doing/],
  ["forbids:", /once it is overdue/],
  ["require:", /What must be true/],
  ["adopted:", /under an order/],
  ["only:", /Where the adoption applies/],
  ["until:", /last day/],
];

describe("over a key", () => {
  beforeAll(() => editor.diagnose(EVERY_KIND, TEXT));

  it.each(HOVERED)("help is shown: %s", async (mark, help) => {
    const shown = await editor.hover(EVERY_KIND, TEXT, mark);
    expect(shown).toMatch(help);
    // A sentence, not a title alone: a capital or a word of the policy, some words, and a full stop.
    expect(shown).toMatch(/^(#### [^\n]+\n\n)?([A-Z]|\\`)[^\n]{15,}\.$/m);
  });
});

const HEAD = `${TEXT.split("\n")[0]}\ntenbar: 1\n`;
const STEP = `${HEAD}checks:\n  daily:\n    steps:\n      - step: leak\n`;

/** The keys that are offered: what would be written up to the first colon. */
async function offerKeys(text: string): Promise<readonly string[]> {
  const offers = await editor.complete(nextPath(), text);
  return [...new Set(offers.map(({ insert }) => insert.split(":")[0] ?? ""))].sort();
}

async function offerValues(text: string): Promise<readonly string[]> {
  return (await editor.complete(nextPath(), text)).map(({ label }) => label);
}

const COMMON_KEYS = [..."after ask basis before behind consequence each formerly instrument when-fitted".split(" ")];
const OWN_KEYS: Readonly<Record<(typeof STEP_KINDS)[number], string>> = {
  confirm: "attestable defects",
  match: "differs-from equals ignore places",
  reading: "apart quantity tolerance use",
  hold: "change drop lasting quantity rise start temperature",
  timing: "from-event to-event tolerance",
  "in-date": "not-past within",
};

describe("what is offered", () => {
  it("at the top: the keys of a policy that are not there yet", async () => {
    const keys = "adopted cautions checks deference extends facts for instruments intervals policy rules tolerances";
    expect(await offerKeys(`${HEAD}|`)).toEqual([...keys.split(" "), "undecided", "without"]);
  });

  it("as a kind: every kind of step, with its help", async () => {
    const offers = await editor.complete(nextPath(), `${STEP}        kind: |`);
    expect(offers.map(({ label }) => label)).toEqual([...STEP_KINDS]);
    for (const { label, help } of offers) expect(help).toMatch(new RegExp(`^\`${label}\`: .{15,}\\.$`));
  });

  it("in a step without a kind: `kind`, and no key of any kind", async () => {
    expect(await offerKeys(`${STEP}        |`)).toEqual(["kind"]);
  });

  it.concurrent.each(STEP_KINDS)(
    "behind `kind: %s`: the keys of that kind and of every step, and none of another",
    async (kind) => {
      const keys = await offerKeys(`${STEP}        kind: ${kind}\n        |`);
      expect(keys).toEqual([...COMMON_KEYS, ...OWN_KEYS[kind].split(" ")].sort());
    },
  );

  it("as a consequence: all four, mildest first", async () => {
    expect(await offerValues(`${STEP}        kind: hold\n        consequence: |`)).toEqual([...CONSEQUENCES]);
  });

  it("as the kind of a basis: all four, with their help", async () => {
    const offers = await editor.complete(nextPath(), `${STEP}        kind: hold\n        basis:\n          kind: |`);
    expect(offers.map(({ label }) => label)).toEqual(["common-practice", "published", "manufacturer", "local"]);
    for (const { help } of offers) expect(help.length).toBeGreaterThan(15);
  });

  it("in a published basis: its keys", async () => {
    const keys = await offerKeys(`${STEP}        kind: hold\n        basis:\n          kind: published\n          |`);
    expect(keys).toEqual(["clause", "edition", "note", "seen", "source"]);
  });

  it("as an order: the word, and the words of the map", async () => {
    expect(await offerValues(`${HEAD}checks:\n  daily:\n    order: |`)).toContain("any");
    const listed = await offerValues(`${HEAD}checks:\n  daily:\n    order:\n      listed-by: |`);
    expect(listed).toEqual(["position", "at"]);
  });
});

describe("the language server", () => {
  it("goes by the schema that its settings name for a text without the comment", async () => {
    const other = await openEditor({ "schemas/policy.schema.json": "tests/**/*.yaml" });
    const problems = await other.diagnose(nextPath(), alter("kind: timing", "kind: timeing").replace(/^#.*/, "#"));
    expect(problems).toEqual([{ line: findLine("kind: timing"), message: expect.stringContaining('"in-date"') }]);
    expect(await other.close()).toBe("");
  });

  it("did all this without the network and without a complaint", async () => {
    complaints ??= await editor.close();
    expect(complaints).toBe("");
  });
});
