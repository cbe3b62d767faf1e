import { describe, expect, it } from "vitest";
import { expandExponent } from "../../src/quantities/expand-exponent.js";

// ECMA-262, Number::toString, writes 1e21 and above and below 1e-6 with an exponent; the digits are those of the decimal.
describe("expandExponent", () => {
  it.each([
    ["2.9e2", "290"],
    ["2.9E+2", "290"],
    ["2.95e1", "29.5"],
    ["-2.9e1", "-29"],
    ["1e-7", "0.0000001"],
    ["1.5e-7", "0.00000015"],
    ["120e-1", "12"],
    ["0.29e3", "290"],
    ["1e21", "1000000000000000000000"],
    ["1.05e2", "105"],
    ["1e12", "1000000000000"],
    ["0e5", "0"],
    ["290", "290"],
    ["0290.50", "0290.50"],
    ["1e40", `1${"0".repeat(40)}`],
    ["1e-40", `0.${"0".repeat(39)}1`],
  ])("writes %s as %s", (text, plain) => {
    expect(expandExponent(text)).toBe(plain);
  });

  it.each(["1e41", "1e-41", "1e999", "", "e5", ".5e1", "5.e1", "x5e1", "5e1x", "5e", "5e1.5", "--5e1", "5e1000"])(
    "refuses %s",
    (text) => {
      expect(expandExponent(text)).toBeUndefined();
    },
  );
});
