import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { MISTAKES, type Slip, SOUND } from "./typing-mistakes.js";

const FILE = "lowmere.yaml";
const compile = (text: string) =>
  compilePolicy(text, { file: FILE, parents: { "common-practice/open-circuit": SOUND.shipped } });

/** The spoilt policy, and where in it the mistake stands. */
function plant({ text, from, to }: Slip): { text: string; line: number; column: number } {
  const sound = SOUND[text];
  if (!sound.includes(from)) throw new Error(`the policy has no ${from}`);
  const marked = sound.replace(from, () => to);
  const lines = marked.slice(0, marked.indexOf("«")).split("\n");
  return { text: marked.replace("«", ""), line: lines.length, column: (lines.at(-1) ?? "").length + 1 };
}

describe("the policies that mistakes are planted in", () => {
  it.each(Object.entries(SOUND))("%s has none to begin with", (_, text) => {
    expect(compile(text).diagnostics).toEqual([]);
    expect(text).not.toContain("«");
  });
});

describe.each(Object.entries(MISTAKES))("where %s", (_, slips) => {
  it("three places or more are tried", () => {
    expect(slips.length).toBeGreaterThanOrEqual(3);
    for (const { to } of slips) expect(to.split("«")).toHaveLength(2);
  });

  it.each(slips.map((slip) => [slip.to.trim().split("\n").at(-1) ?? "", slip] as const))(
    "%s gives one diagnostic, at its place, with the mend",
    (_, slip) => {
      const { text, line, column } = plant(slip);
      const { policy, diagnostics } = compile(text);
      expect(diagnostics.map((one) => [one.code, one.line, one.column])).toEqual([[slip.code, line, column]]);
      expect(policy).toBeUndefined();
      const [{ found, nearest, mend, wanted } = {}] = diagnostics;
      if (slip.found !== undefined) expect(found).toBe(slip.found);
      expect(nearest).toBe(slip.nearest);
      expect(mend ?? wanted ?? "").not.toBe("");
      if (slip.mend !== undefined) expect(mend).toContain(slip.mend);
      if (slip.nearest !== undefined) expect(mend).toContain(slip.nearest);
    },
  );
});
