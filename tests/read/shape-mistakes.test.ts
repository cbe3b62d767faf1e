import { describe, expect, it } from "vitest";
import { alter, readText, SMALL } from "./read-text.js";
import { SHAPE_MISTAKES } from "./shape-mistakes.js";

describe("a policy with one mistake of shape", () => {
  it.each(SHAPE_MISTAKES.map(([what, text, ...expected]) => ({ what, text, expected })))(
    "$what: one diagnostic at its place",
    ({ text, expected }) => {
      const [code, line, column, nearest, mend] = expected;
      const { policy, list } = readText(text);
      expect(list.map((one) => [one.code, one.line, one.column, one.nearest])).toEqual([[code, line, column, nearest]]);
      expect(list[0]?.mend ?? "").toContain(mend ?? "");
      expect(policy).toBeUndefined();
    },
  );

  it("lists several mistakes in one run, by position", () => {
    const text = alter("kind: confirm", "kind: confrim", alter("accept:", "acept:", alter("local", "lokal")));
    expect(readText(text).list.map(({ code, line }) => [code, line])).toEqual([
      ["read/unknown-value", 6],
      ["read/unknown-key", 9],
      ["read/unknown-kind", 19],
    ]);
  });

  it("names both places of a duplicate key, and keeps looking", () => {
    const { list } = readText(alter("  status: local", "  title: Again\n  status: lokal"));
    expect(list.map(({ code }) => code)).toEqual(["read/duplicate-key", "read/unknown-value"]);
    expect(list[0]?.related).toEqual([{ message: "the first one", file: "lowmere.yaml", line: 4, column: 3 }]);
  });

  it("counts what it does not list", () => {
    const keys = Array.from({ length: 700 }, (_, index) => `zz${index}: 1\n`).join("");
    const { list } = readText(SMALL + keys);
    expect(list).toHaveLength(501);
    expect(list.find(({ code }) => code === "read/more-mistakes")?.params).toEqual({ count: 200 });
  });
});
