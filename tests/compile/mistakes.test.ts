import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { CASES, MORE, SOUND } from "./meaning-cases.js";

describe("mistakes of meaning", () => {
  it("has none to begin with", () => {
    expect(compilePolicy(SOUND).diagnostics).toEqual([]);
  });

  it.each(
    [...CASES, ...MORE].map((one) => [`${one[2]}: ${one[1].trim() || `without ${one[0].trim()}`}`, one] as const),
  )("%s", (_name, [from, to, code, line, mend]) => {
    expect(SOUND.split(from)).toHaveLength(2);
    const { diagnostics } = compilePolicy(SOUND.replace(from, to));
    expect(diagnostics.map((one) => [one.code, one.line])).toContainEqual([code, line]);
    if (mend !== undefined) expect(diagnostics.find((one) => one.code === code)?.mend).toContain(mend);
  });

  it("gives one error for one slip, but where another hangs on it", () => {
    const several = CASES.flatMap(([from, to]) => {
      const errors = compilePolicy(SOUND.replace(from, to)).diagnostics.filter(({ severity }) => severity === "error");
      return errors.length > 1 ? [[to.trim(), ...errors.map(({ code }) => code)]] : [];
    });
    // Every figure of an instrument hangs on what it measures, and a rule on the name of the fact that it reads.
    expect(several.map(([to]) => to)).toEqual(["quantity: duration, division", "station: {"]);
  });

  it("warns of an adoption whose review has passed, on the given day", () => {
    const lasting = SOUND.replace("until: 2026-05-31", "review: 2026-09-01");
    const on = (asOf: string) => compilePolicy(lasting, { asOf }).diagnostics.map(({ code, line }) => [code, line]);
    expect(on("2026-09-01")).toEqual([]);
    expect(on("2026-09-02")).toEqual([["plan/review-passed", 62]]);
  });
});
