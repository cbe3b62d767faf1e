import { describe, expect, it } from "vitest";
import { alter, readText } from "./read-text.js";
import { TEXT_MISTAKES } from "./text-mistakes.js";

describe("a text with one mistake of YAML", () => {
  it.each(TEXT_MISTAKES.map(([what, text, ...expected]) => ({ what, text, expected })))(
    "$what: one diagnostic at its place",
    ({ text, expected }) => {
      const [code, line, column, mend] = expected;
      const { policy, list } = readText(text);
      expect(list.map((one) => [one.code, one.line, one.column])).toEqual([[code, line, column]]);
      expect(list[0]?.mend ?? "").toContain(mend ?? "");
      expect(policy).toBeUndefined();
    },
  );

  it("lists slips in separate entries together", () => {
    const text = alter("      - step: leak", "\t- step: leak", alter("title: S", "title S"));
    expect(readText(text).list.map(({ code, line }) => [code, line])).toEqual([
      ["read/no-colon", 4],
      ["read/tab-indent", 14],
    ]);
  });

  it("reports what is refused beside mistakes of shape", () => {
    const text = alter("status: local", "status: lokal", alter("Small checks", "&t Small checks"));
    expect(readText(text).list.map(({ code }) => code)).toEqual(["read/anchor", "read/unknown-value"]);
  });
});

describe("a quote in a plain text", () => {
  it.each(["All the sets'", 'A "small" check of "two"', 'A 3/4" hose', "It's small", "'A hose of 3/4\"'", "Max'"])(
    "is a character of it in %s",
    (title) => {
      const { policy, list } = readText(alter("Small checks", title));
      expect(list).toEqual([]);
      expect(policy?.document.policy.title).toBe(title.replace(/^'(.*)'$/, "$1"));
    },
  );

  it("that closes two texts is told of each", () => {
    const text = alter("10 bar }", '10 bar" }', alter("Small checks", 'Small checks"'));
    expect(readText(text).list.map(({ code, line }) => [code, line])).toEqual([
      ["read/stray-quote", 4],
      ["read/stray-quote", 9],
    ]);
  });
});

describe("a hash behind a plain text", () => {
  it("is a warning where something follows it at once, and the policy is read", () => {
    const { policy, list } = readText(alter("Small checks", "Set #4"));
    expect(list.map((one) => [one.code, one.severity, one.line, one.column, one.found])).toEqual([
      ["read/text-cut-by-comment", "warning", 4, 14, "Set"],
    ]);
    expect(list[0]?.mend).toContain('`"Set #4"`');
    expect(policy?.document.policy.title).toBe("Set");
  });

  it.each(["Set # four", '"Set #4"', "Set#4", "Set ## four"])("is a comment or a character in %s", (title) => {
    expect(readText(alter("Small checks", title)).list).toEqual([]);
  });

  it("is not mentioned beside an error of the same value", () => {
    expect(readText(alter("status: local", "status: lokal #4")).list.map(({ code }) => code)).toEqual([
      "read/unknown-value",
    ]);
  });
});
