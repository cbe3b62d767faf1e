import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FAULTS } from "./faults.js";

describe("the planted faults", () => {
  it.each(FAULTS.map((fault) => [fault.name, fault] as const))(
    "%s: its stretch stands once",
    (_, { file, from, to }) => {
      expect(readFileSync(file, "utf8").split(from)).toHaveLength(2);
      expect(to).not.toBe(from);
    },
  );
});
