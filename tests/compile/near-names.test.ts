import { describe, expect, it } from "vitest";
import { compilePolicy } from "../../src/index.js";
import { SOUND } from "./meaning-cases.js";

const HEAD = `tenbar: 1
policy: { id: lowmere/station, title: Station, version: "1", status: local }
extends: ./one.yaml
`;
const BASIS = "basis: { kind: common-practice }";

function listWarnings(text: string) {
  const { diagnostics } = compilePolicy(`${HEAD}${text}`, { parents: { "./one.yaml": SOUND } });
  return diagnostics.map(({ code, line, nearest }) => [code, line, nearest]);
}

const steps = (...lines: readonly string[]) => `checks:\n  daily:\n    steps:\n${lines.join("\n")}\n`;

describe("a step that is to stand beside itself", () => {
  it.each([
    ["before", "new", "torch", "a step cannot stand before itself: `torch`"],
    ["behind", "the parent's", "harness", "a step cannot stand after itself: `harness`"],
  ])("is told so: %s, %s", (key, _whose, step, message) => {
    const text = `${HEAD}${steps(`      - { step: ${step}, kind: confirm, ${key}: ${step} }`)}`;
    const { diagnostics } = compilePolicy(text, { parents: { "./one.yaml": SOUND } });
    expect(diagnostics.map((one) => [one.code, one.line, one.message])).toEqual([
      ["plan/step-before-itself", 7, message],
    ]);
    expect(diagnostics[0]?.mend).toBe(`name another step in \`${key}\`, or take it out`);
  });
});

describe("a name of a child that is close to one of its parent's", () => {
  it.each([
    ["step", steps("      - { step: harnes, kind: confirm }"), 7, "harness"],
    ["check", "checks:\n  dialy: { order: any, steps: [{ step: torch, kind: confirm }] }\n", 5, "daily"],
    ["fact", "facts:\n  rolle: { at: /subject/role, value: text }\n", 5, "role"],
    [
      "interval",
      `intervals:\n  requalifed: { of: cylinder, every: P5Y, counted: from-last, date: requalifiedOn, ${BASIS} }\n`,
      5,
      "requalified",
    ],
  ])("is warned of: %s", (_thing, text, line, nearest) => {
    expect(listWarnings(text)).toEqual([["resolve/near-name", line, nearest]]);
  });

  it("is offered where a tolerance is used by nothing, since the parent's limit goes on", () => {
    const text = `tolerances:\n  leak-dorp: { accept: { at-most: 5 bar }, ${BASIS} }\n`;
    expect(listWarnings(text)).toEqual([["plan/unused", 5, "leak-drop"]]);
    const { diagnostics } = compilePolicy(`${HEAD}${text}`, { parents: { "./one.yaml": SOUND } });
    expect(diagnostics[0]?.mend).toContain("the parent's `leak-drop` stands as it was");
  });

  it.each([
    ["it is the parent's name", steps("      - { step: harness, kind: confirm, ask: Straps }")],
    [
      "it says that it was formerly that",
      steps("      - { step: harnes, kind: confirm, formerly: [harness] }").replace(
        "steps:",
        "without: [harness]\n    steps:",
      ),
    ],
    ["it stands beside that", steps("      - { step: harnes, kind: confirm, behind: harness }")],
    ["it differs by more", steps("      - { step: torch, kind: confirm }")],
  ])("is let be where %s", (_why, text) => {
    expect(listWarnings(text).filter(([code]) => code === "resolve/near-name")).toEqual([]);
  });

  it("is let be where only its figures differ", () => {
    const parent = SOUND.replace("step: number", "step: number-1");
    const text = `${HEAD}${steps("      - { step: number-2, kind: confirm }")}`;
    expect(compilePolicy(text, { parents: { "./one.yaml": parent } }).diagnostics).toEqual([]);
  });
});
