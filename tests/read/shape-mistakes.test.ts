import { describe, expect, it } from "vitest";
import { alter, readText, SMALL } from "./read-text.js";

type Mistake = readonly [
  what: string,
  text: string,
  code: string,
  line: number,
  column: number,
  nearest?: string | undefined,
  mend?: string,
];

/** Every text has exactly one mistake; `mend` are words of what is proposed. */
const MISTAKES: readonly Mistake[] = [
  ["misspelt key", alter("accept:", "acept:"), "read/unknown-key", 9, 5, "accept", "write `accept`"],
  ["misspelt key that is required", alter("title: Small", "titel: Small"), "read/unknown-key", 4, 3, "title"],
  ["misspelt tag key", alter("kind: hold", "knd: hold"), "read/unknown-key", 15, 9, "kind", "write `kind`"],
  ["key of another kind", alter("ask: Str", "lasting: Str"), "read/unknown-key", 20, 9, undefined, "belongs to `hold`"],
  ["key named like a prototype", `${SMALL}__proto__: 1\n`, "read/unknown-key", 21, 1],
  ["key named like a constructor", `${SMALL}constructor: 1\n`, "read/unknown-key", 21, 1],
  ["key named like a method", alter("ask: Str", "toString: Str"), "read/unknown-key", 20, 9],
  ["missing key", alter("  id: lowmere/small\n", ""), "read/missing-key", 2, 1, undefined, "add `id: …`"],
  ["missing key at the top", alter("tenbar: 1\n", ""), "read/missing-key", 1, 1, undefined, "add `tenbar: …`"],
  ["missing key in a list", alter("        quantity: pressure\n", ""), "read/missing-key", 14, 9],
  ["missing tag", alter("        kind: hold\n", ""), "read/missing-key", 14, 9, undefined, "add `kind: …`"],
  ["misspelt kind", alter("kind: hold", "kind: timeing"), "read/unknown-kind", 15, 15, "timing", "write `timing`"],
  ["kind that is a number", alter("kind: hold", "kind: 5"), "read/unknown-kind", 15, 15],
  ["kind without a value", alter("kind: hold", "kind:"), "read/no-value", 15, 9],
  ["misspelt word", alter("status: local", "status: lokal"), "read/unknown-value", 6, 11, "local", "write `local`"],
  ["word that is a number", alter("status: local", "status: 1"), "read/unknown-value", 6, 11],
  ["another language version", alter("tenbar: 1", "tenbar: 2"), "read/unknown-value", 1, 9],
  [
    "quoted number",
    alter("tenbar: 1", 'tenbar: "1"'),
    "read/unknown-value",
    1,
    9,
    undefined,
    "write `1` without quotes",
  ],
  [
    "order number",
    alter("common-practice }", "local, order: 014 }"),
    "read/unquoted-text",
    10,
    34,
    undefined,
    'put it in quotes: `"014"`',
  ],
  ["version", alter('"1"', "2026.10"), "read/unquoted-text", 5, 12, undefined, 'put it in quotes: `"2026.10"`'],
  ["version true", alter('"1"', "true"), "read/unquoted-text", 5, 12, undefined, 'put it in quotes: `"true"`'],
  ["title null", alter("Small checks", "null"), "read/unquoted-text", 4, 10, undefined, "put it in quotes"],
  ["endless number", alter('"1"', "20260412000000000001"), "read/number-not-exact", 5, 12, undefined, "quotes"],
  ["no value", alter(" Small checks", ""), "read/no-value", 4, 3, undefined, "write its value"],
  ["value begins with a hash", alter("Small checks", "#4"), "read/no-value", 4, 3, undefined, 'in quotes (`"#4"`)'],
  ["empty text", alter("Small checks", '""'), "read/empty-text", 4, 10],
  ["limit without unit", alter("10 bar", "5.5"), "read/wrong-type", 9, 24, undefined, "unit behind the number"],
  [
    "text for a list",
    alter("        drop:", "        after: leak\n        drop:"),
    "read/wrong-type",
    17,
    16,
    undefined,
    "`[leak]`",
  ],
  ["yes", alter("ask: Straps are sound", "attestable: yes"), "read/wrong-type", 20, 21, undefined, "write `true`"],
  ["list at the top", "- tenbar: 1\n", "read/wrong-type", 1, 1, undefined, "begin the policy with `tenbar: 1`"],
  ["map for a tolerance's name", alter("leak-drop\n      -", "[leak-drop]\n      -"), "read/wrong-type", 17, 15],
  [
    "capitals in a name",
    alter("step: harness", "step: Harness"),
    "read/bad-text",
    18,
    15,
    "harness",
    "write `harness`",
  ],
  ["capitals in an id", alter("lowmere/s", "Lowmere/S"), "read/bad-text", 3, 7, "lowmere/small"],
  ["dots in a pointer", `${SMALL}facts:\n  r: { at: subject.role }\n`, "read/bad-text", 22, 12, "/subject/role"],
  ["blank in a tolerance's name", alter("  leak-drop:", "  Leak drop:"), "read/bad-name", 8, 3, "leak-drop"],
  ["nothing to accept", alter("{ at-most: 10 bar }", "{}"), "read/empty-map", 9, 13],
  ["one end of a band", alter("at-most: 10 bar", "between: [10 bar]"), "read/wrong-count", 9, 24],
  ["text too long", alter("Small checks", "x".repeat(4001)), "read/too-long", 4, 10],
  ["duplicate key", alter("  status", "  title: Again\n  status"), "read/duplicate-key", 6, 3],
  ["number as a key", `${SMALL}5: x\n`, "read/key-not-text", 21, 1],
  ["list as a key", `${SMALL}? [a]\n: b\n`, "read/key-not-text", 21, 3],
  ["comma in braces", alter("e }", "e, note: a, b }"), "read/text-cut-by-comma", 10, 46, undefined, 'note: "a, b"'],
  ["two commas", alter("e }", "e, note: a, b, 5 }"), "read/text-cut-by-comma", 10, 46, undefined, '`note: "a, b, 5"`'],
  ["comma in a scope", `${SMALL}for: { kind: a, b }\n`, "read/text-cut-by-comma", 21, 17, undefined, '`kind: "a, b"`'],
  ["key alone in braces", alter("at-most: 10 bar", "at-most"), "read/no-value", 9, 15],
  ["no space in braces", alter("at-most: ", "at-most:"), "read/no-space-behind-colon", 9, 15],
];

describe("a policy with one mistake of shape", () => {
  it.each(MISTAKES.map(([what, text, ...expected]) => ({ what, text, expected })))(
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
