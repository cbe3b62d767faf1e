import { describe, expect, it } from "vitest";
import { readText, SMALL } from "./read-text.js";

const RULE = "rules:\n  - rule: r\n    basis: { kind: common-practice }\n    require: ";
/** Levels around the term of a rule: the policy, the list of rules, the rule. */
const LEVELS_AROUND = 3;

function codesOf(text: string): readonly string[] {
  return readText(text).list.map(({ code }) => code);
}

function countNodes(value: unknown): number {
  if (Array.isArray(value)) return value.reduce<number>((sum, member) => sum + countNodes(member), 1);
  if (typeof value !== "object" || value === null) return 1;
  return Object.values(value).reduce<number>((sum, member) => sum + 1 + countNodes(member), 1);
}

describe("nesting", () => {
  // The YAML library ends the process when it composes such a text twice; a process that lives is the evidence.
  it("is refused before anything is composed, however often", () => {
    for (let round = 0; round < 50; round++) {
      expect(codesOf(`${"[".repeat(1000)}${"]".repeat(1000)}`)).toEqual(["read/too-deep"]);
    }
  });

  it.each([
    ["lists in brackets", "[".repeat(50_000)],
    ["maps in braces", "{a: ".repeat(50_000)],
    ["lists by hyphens", "- ".repeat(50_000)],
    ["maps by question marks", "? ".repeat(50_000)],
    ["lines indented further and further", Array.from({ length: 400 }, (_, i) => `${" ".repeat(i)}a:\n`).join("")],
    ["pairs in brackets", "[a: ".repeat(50_000)],
  ])("of %s is refused at the 65th level", (_, text) => {
    const { list } = readText(text);
    expect(list.map(({ code, params }) => [code, params["most"]])).toEqual([["read/too-deep", 64]]);
  });

  it("of 64 levels is read, of 65 refused", () => {
    const nest = (levels: number) => SMALL + RULE + "[".repeat(levels) + "]".repeat(levels);
    expect(codesOf(nest(64 - LEVELS_AROUND))).toEqual([]);
    expect(codesOf(nest(65 - LEVELS_AROUND))).toEqual(["read/too-deep"]);
  });

  it("of single pairs in brackets counts the pair as a level", () => {
    const pairs = (count: number) => `${SMALL + RULE}${"[a: ".repeat(count)}1${"]".repeat(count)}`;
    expect(codesOf(pairs(30))).toEqual([]);
    expect(codesOf(pairs(31))).toEqual(["read/too-deep"]);
  });
});

describe("size", () => {
  it("of 1 MiB of UTF-8 is read, a byte more refused", () => {
    const bytes = new TextEncoder().encode(SMALL).length + 2;
    const fill = (length: number) => `${SMALL}# ${"é".repeat(Math.floor((length - bytes) / 2))}`;
    const full = fill(1_048_576);
    const missing = 1_048_576 - new TextEncoder().encode(full).length;
    expect(codesOf(full + "x".repeat(missing))).toEqual([]);
    expect(readText(`${full}${"x".repeat(missing + 1)}`).list.map(({ code, params }) => [code, params])).toEqual([
      ["read/too-large", { bytes: 1_048_577, most: 1_048_576 }],
    ]);
  });

  it("of 100,000 keys and values is read, of one more refused", () => {
    const head = JSON.stringify({ tenbar: 1, policy: { id: "a", title: "t", version: "1", status: "local" } }).slice(
      0,
      -1,
    );
    const write = (count: number) =>
      `${head},"rules":[{"rule":"r","basis":{"kind":"common-practice"},"require":[${"0,".repeat(count - 1)}0]}]}`;
    const room = 100_000 - countNodes(JSON.parse(write(1))) + 1;
    expect(codesOf(write(room))).toEqual([]);
    expect(codesOf(write(room + 1))).toEqual(["read/too-many-nodes"]);
  });

  it("of a million commas is refused before it is composed", () => {
    expect(codesOf(`[${",".repeat(1_000_000)}]`)).toEqual(["read/too-many-nodes"]);
  });
});

describe("a key like that of a built-in", () => {
  it("sets no prototype and is found only where it was written", () => {
    const { policy, list } = readText(`${SMALL}${RULE}{ "__proto__": { polluted: true } }\n`);
    expect(list).toEqual([]);
    const require = policy?.document.rules?.[0]?.require;
    expect(Object.keys(require ?? {})).toEqual(["__proto__"]);
    expect(Reflect.get(Object(require), "polluted")).toBeUndefined();
    expect(Reflect.get({}, "polluted")).toBeUndefined();
    expect(policy?.document.tolerances?.["constructor"]).toBeUndefined();
  });
});
