import { describe, expect, it } from "vitest";
import { adopt, compileSound, head, looser } from "./orders.js";
import { assess } from "./sample.js";

describe("the note on a departure", () => {
  const middle = `${looser}adopted:\n${adopt("pump", "step: daily/leak, until: 2026-04-30")}`;
  const child = `${head("g", "./middle.yaml")}adopted:
  - { id: pump, step: daily/leak, requirement: drop, accept: { at-most: 30 bar }, from: 2026-04-01, until: 2026-06-30, order: "LO 2", by: An officer, reason: A trial }
`;
  const policy = compileSound(child, { "./middle.yaml": middle });

  // The parent's order, which ends first, covers what the parent loosens; the child's of the same id states limits of its own.
  it.each(["2026-04-12", "2026-06-12"])("names the order that decides, of two with one id: %s", (at) => {
    const leak = { step: "leak", start: "290 bar", end: "265 bar", held: "60 s" };
    const { results, findings } = assess(policy, [leak], {}, { at });
    expect(results).toContainEqual(
      expect.objectContaining({ requirement: "drop", outcome: "within", adopted: "pump" }),
    );
    expect(findings.filter(({ code }) => code === "step/adopted").map(({ params }) => params)).toEqual([
      { adoption: "pump", order: "LO 2", until: "2026-06-30", without: "outside" },
    ]);
  });

  // Where the order covers and accepts under one id, each limit has a place of its own.
  it.each([
    ["2026-04-12", "at most 30 bar", "child.yaml"],
    ["2026-06-12", "at most 30 bar", "child.yaml"],
    ["2026-07-12", "at most 10 bar", "./parent.yaml"],
  ])("stands with the place of the limit that is told: %s", (at, accept, file) => {
    const leak = { step: "leak", start: "290 bar", end: "255 bar", held: "60 s" };
    const { findings } = assess(policy, [leak], {}, { at });
    const found = findings.filter(({ code }) => code === "hold/drop-outside");
    expect(found.map(({ params, limitAt }) => [params["accept"], limitAt?.file])).toEqual([[accept, file]]);
  });
});
