import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import type { FindingParams } from "../../src/words/index.js";

const say = (accept: string) => {
  const params: FindingParams = {
    ...{ outcome: "outside", observed: "20 bar", accept, never: false, quantity: "pressure" },
    ...{ defect: undefined, late: undefined, early: undefined, forbids: undefined },
  };
  return german.findings.decided.level(params);
};

describe("a limit in a German sentence", () => {
  it.each([
    ["25 s bis 35 s", "sind `25 s` bis `35 s`"],
    ["mindestens 270 bar", "sind mindestens `270 bar`"],
    ["höchstens 0 bar", "sind höchstens `0 bar`"],
    ["höchstens 1 bar", "ist höchstens `1 bar`"],
    ["höchstens 1", "ist höchstens 1"],
    ["mindestens 500", "sind mindestens 500"],
    ["höchstens 0.1 bar", "sind höchstens `0.1 bar`"],
    ["satisfactory", "ist satisfactory"],
  ])("%s: zulässig %s", (accept, said) => {
    expect(say(accept)).toBe(`abgelesen wurde \`20 bar\`; zulässig ${said}`);
  });
});
