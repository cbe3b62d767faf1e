import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createQuantityReader, DIMENSIONS, parseQuantity } from "../../src/quantities/index.js";
import { countQuickRuns } from "../laws/run-count.js";
import { SEED } from "./read-sample.js";

const VALUES = fc.oneof(
  fc
    .tuple(
      fc.integer({ min: -400, max: 400 }),
      fc.constantFrom("bar", "psi", "s", "%", "Cel", "K", "Bar", "furlong", ""),
    )
    .map(([number, unit]) => `${number} ${unit}`.trim()),
  fc.string({ maxLength: 40 }),
  fc.jsonValue(),
);

describe("createQuantityReader", () => {
  it("gives what parseQuantity gives, first and later", () => {
    const read = createQuantityReader();
    fc.assert(
      fc.property(VALUES, fc.constantFrom(...DIMENSIONS), (value, dimension) => {
        const plain = parseQuantity(value, dimension);
        expect(read(value, dimension)).toEqual(plain);
        expect(read(value, dimension)).toEqual(plain);
      }),
      { seed: SEED, numRuns: countQuickRuns(10_000) },
    );
  });

  it("keeps one text apart by dimension", () => {
    const read = createQuantityReader();
    expect(read("5 K", "temperature")).toEqual(parseQuantity("5 K", "temperature"));
    expect(read("5 K", "temperature-difference")).toEqual(parseQuantity("5 K", "temperature-difference"));
    expect(read("5 K", "pressure")).toEqual({ ok: false, fault: "wrong-dimension" });
  });

  it("remembers a text, and forgets it once 2048 others were read", () => {
    const read = createQuantityReader();
    const first = read("280.5 bar", "pressure");
    expect(read("280.5 bar", "pressure")).toBe(first);
    for (let number = 0; number < 2048; number += 1) read(`${number} bar`, "pressure");
    expect(read("280.5 bar", "pressure")).not.toBe(first);
    expect(read("280.5 bar", "pressure")).toEqual(first);
  });

  it("keeps what it has remembered until the 2049th text", () => {
    const read = createQuantityReader();
    const first = read("280.5 bar", "pressure");
    for (let number = 0; number < 2047; number += 1) read(`${number} bar`, "pressure");
    expect(read("280.5 bar", "pressure")).toBe(first);
  });

  it("remembers texts of 32 characters and none that are longer", () => {
    const read = createQuantityReader();
    const [longest, longer] = ["280.00000000000000000000000x bar", "280.000000000000000000000000x bar"];
    expect([longest.length, longer.length]).toEqual([32, 33]);
    expect(read(longest, "pressure")).toBe(read(longest, "pressure"));
    expect(read(longer, "pressure")).not.toBe(read(longer, "pressure"));
  });

  it("stays right after its memory was emptied", () => {
    const read = createQuantityReader();
    for (let round = 0; round < 2; round += 1) {
      for (let tenths = 0; tenths < 5000; tenths += 1) {
        const result = read(`${tenths / 10} bar`, "pressure");
        expect(result.ok && result.quantity.quanta).toBe(tenths * 10_000_000);
      }
    }
  });
});
