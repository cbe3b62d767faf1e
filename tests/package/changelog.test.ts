import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ENGINE_VERSION } from "../../src/index.js";

const HEADINGS = [...readFileSync("CHANGELOG.md", "utf8").matchAll(/^## (.*)$/gm)].map((match) => match[1] ?? "");
const MANIFEST: { version: string } = JSON.parse(readFileSync("package.json", "utf8"));

describe("the changelog", () => {
  it("names in each heading a version, and whether it is out", () => {
    expect(HEADINGS.length).toBeGreaterThan(0);
    for (const heading of HEADINGS) expect(heading).toMatch(/^\d+\.\d+\.\d+ \((unreleased|\d{4}-\d{2}-\d{2})\)$/);
  });

  it("begins with the version of the package, which the engine states too", () => {
    expect(HEADINGS[0]?.split(" ")[0]).toBe(MANIFEST.version);
    expect(ENGINE_VERSION).toBe(MANIFEST.version);
  });

  it("goes from new to old, and only the newest may be unreleased", () => {
    const numbers = HEADINGS.map((heading) => heading.split(" ")[0] ?? "");
    const sorted = [...numbers].sort((one, other) => other.localeCompare(one, "en", { numeric: true }));
    expect(numbers).toEqual(sorted);
    expect(HEADINGS.slice(1).filter((heading) => heading.includes("unreleased"))).toEqual([]);
  });
});
