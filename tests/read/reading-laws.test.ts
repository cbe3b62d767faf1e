import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { MODELS } from "../../src/model/index.js";
import { extendPointer } from "../../src/read/json-pointer.js";
import { OPEN_CIRCUIT, readText, SMALL } from "./read-text.js";

const PIECES = [
  "{",
  "}",
  "[",
  "]",
  ":",
  ": ",
  "- ",
  "\n",
  "\t",
  "#",
  " #",
  '"',
  "'",
  "&a ",
  "*a",
  "!t ",
  "---\n",
  "%",
  "|",
  ">",
  "? ",
  ",",
  "\0",
  "\ud800",
  "\ufeff",
  "<<: ",
  "null",
  "014",
  "__proto__: ",
  "\\",
  "@",
  "  ",
  "\r",
  "é",
];

function expectReadOrRefused(text: string): void {
  const { policy, list } = readText(text);
  expect(policy === undefined).toBe(list.some(({ severity }) => severity === "error"));
  const lines = text.split("\n").length;
  for (const one of list) {
    expect(one.line).toBeGreaterThanOrEqual(1);
    expect(one.endLine).toBeLessThanOrEqual(lines);
    expect([one.endLine > one.line || one.endColumn >= one.column, one.frame.length > 0]).toEqual([true, true]);
    expect(one.message).toMatch(/^[^A-Z]|^U\+/);
    expect(one.message).not.toMatch(/[.\n]$/);
  }
}

/** Every map's keys with the pointer of the map, rule terms left out: any key is good in them. */
function listKeys(value: unknown, pointer = ""): readonly (readonly [string, string])[] {
  if (typeof value !== "object" || value === null || /^\/rules\/\d+\/(when|require)/.test(pointer)) return [];
  return Object.entries(value).flatMap(([key, member]) => [
    ...(Array.isArray(value) ? [] : [[pointer, key] as const]),
    ...listKeys(member, extendPointer(pointer, key)),
  ]);
}

describe("any text", () => {
  it("is read or refused with an error, and nothing is thrown", () => {
    fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 60 }), expectReadOrRefused), { numRuns: 300 });
    const yamlish = fc.array(fc.oneof(fc.constantFrom(...PIECES), fc.constantFrom("a", "id", "kind")), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(yamlish, (pieces) => expectReadOrRefused(pieces.join(""))),
      { numRuns: 1500 },
    );
  });

  it("that was a policy before it was spoilt is read or refused", () => {
    const cut = fc.record({
      at: fc.nat({ max: OPEN_CIRCUIT.length }),
      gone: fc.nat({ max: 12 }),
      put: fc.array(fc.constantFrom(...PIECES), { maxLength: 3 }),
    });
    const property = fc.property(cut, ({ at, gone, put }) =>
      expectReadOrRefused(OPEN_CIRCUIT.slice(0, at) + put.join("") + OPEN_CIRCUIT.slice(at + gone)),
    );
    fc.assert(property, { numRuns: 400 });
  });

  it("without one of the lines of a policy is read or refused", () => {
    const lines = OPEN_CIRCUIT.split("\n");
    for (const gone of lines.keys()) expectReadOrRefused(lines.filter((_, index) => index !== gone).join("\n"));
  });
});

describe("a good policy", () => {
  it.each([
    ["the small one", SMALL],
    ["the documented one", OPEN_CIRCUIT],
  ])("%s has no diagnostics, and is what the YAML library makes of it", (_, text) => {
    const { policy, list } = readText(text);
    expect(list).toEqual([]);
    expect(policy?.document).toEqual(parse(text));
  });

  // JSON.parse is the oracle.
  it.each([undefined, 2, "\t"])("reads the same as JSON, indented by %j", (indent) => {
    const json = JSON.stringify(parse(OPEN_CIRCUIT), null, indent);
    const { policy, list } = readText(json);
    expect(list).toEqual([]);
    expect(policy?.document).toEqual(JSON.parse(json));
  });

  it("has no key that can be misspelt without exactly one diagnostic that names it", () => {
    const { policy } = readText(OPEN_CIRCUIT);
    const misspelt = listKeys(policy?.document).filter(([pointer, key]) => {
      const { start, end } = policy?.place(extendPointer(pointer, key), "key").span ?? { start: 0, end: 0 };
      // Why: of two keys that are alike, `to` and `from` say, a doubled letter still leaves the right one the nearest.
      const wrong = `${key.slice(0, 1)}${key}`;
      const { policy: accepted, list } = readText(OPEN_CIRCUIT.slice(0, start) + wrong + OPEN_CIRCUIT.slice(end));
      // A name that its author chose, or a fact in a scope, may be any name.
      if (accepted !== undefined) return false;
      expect([key, list.map((one) => [one.code, one.nearest])]).toEqual([key, [["read/unknown-key", key]]]);
      return true;
    });
    expect(misspelt.length).toBeGreaterThan(150);
  });
});

describe("the shape", () => {
  // The policy model itself, which the validator was generated from, is the second evaluator.
  it("is accepted exactly where the policy model accepts it", () => {
    const paths = listKeys(parse(OPEN_CIRCUIT));
    const junk = fc.constantFrom<unknown>(null, 0, 1.5, true, "", "x y", "daily", "10 bar", [], ["a"], [1], { a: 1 });
    const change = fc.record({ path: fc.constantFrom(...paths), to: fc.option(junk, { nil: undefined }) });
    let refused = 0;
    const property = fc.property(change, ({ path: [pointer, key], to }) => {
      const document: unknown = parse(OPEN_CIRCUIT);
      const holder = pointer
        .split("/")
        .slice(1)
        .reduce((part: unknown, token) => Reflect.get(Object(part), token), document);
      if (to === undefined) Reflect.deleteProperty(Object(holder), key);
      else Reflect.set(Object(holder), key, to);
      // Why: the model states that a map must not be empty in its schema only.
      fc.pre(Object.keys(Object(holder)).length > 0);
      const isGood = MODELS.policy.safeParse(document).success;
      if (!isGood) refused++;
      expect(readText(stringify(document, { aliasDuplicateObjects: false })).policy !== undefined).toBe(isGood);
    });
    fc.assert(property, { numRuns: 500 });
    expect(refused).toBeGreaterThan(100);
  });
});
