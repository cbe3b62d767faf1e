import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import { compilePolicy, describeCheck, evaluate } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";
import { renderAssessment } from "../../src/report/index.js";

const LOWMERE = "examples/lowmere/policy.yaml";

async function loadLowmere() {
  const { policy } = await loadPolicy(LOWMERE);
  if (policy === undefined) throw new Error("the policy of Lowmere does not compile");
  return policy;
}

const readRecord = (name: string): unknown => JSON.parse(readFileSync(`examples/lowmere/records/${name}.json`, "utf8"));

describe("German", () => {
  it("says what a record comes to", async () => {
    const assessment = evaluate(await loadLowmere(), readRecord("lowmere-front-line-set-at-250"), { words: german });
    expect(assessment.verdict).toBe("withdraw");
    expect(assessment.findings.map(({ code, message }) => [code, message])).toEqual([
      [
        "reading/level-outside",
        "abgelesen wurde `250 bar`; zulässig sind `270 bar` (`90 %` von rated-pressure) bis `330 bar` (`110 %` von rated-pressure)",
      ],
      ["step/adopted", "beurteilt nach der Ausnahme `charge-by-role` (LO 12, bis auf Weiteres); ohne sie: außerhalb"],
    ]);
    expect(assessment.findings[0]?.params).toMatchObject({
      observed: "250 bar",
      accept: "270 bar (90 % von rated-pressure) bis 330 bar (110 % von rated-pressure)",
    });
  });

  it("prints a report whose columns fit", async () => {
    const assessment = evaluate(await loadLowmere(), readRecord("lowmere-front-line-set-at-250"), { words: german });
    const lines = renderAssessment(assessment, { color: false, width: 80, words: german }).split("\n");
    expect(lines[0]).toMatch(/^lm1-s011-0502, S-011, daily +außer Dienst nehmen$/);
    expect(lines).toContain("  sperren   charge, C-301, Messwert: außerhalb");
    expect(lines).toContain("            Abweichung    20 bar außerhalb der Grenze");
    expect(lines).toContain("            Grundlage     örtliche Anordnung: LO 12");
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("says why a record cannot be judged at all", async () => {
    const { problems, judged } = evaluate(await loadLowmere(), { tenbar: 2, steps: {} }, { words: german });
    expect(judged).toBe(false);
    expect(problems?.map(({ message }) => message)).toEqual([
      "`tenbar` muss die Zahl 1 sein",
      "`id` muss ein Text sein, der nicht leer ist",
      "`check` muss ein Text sein, der nicht leer ist",
      "`at` muss ein Zeitpunkt mit Zeitzone, eine Ortszeit oder ein Datum sein, etwa `2026-04-12T07:04:00+01:00`",
      "`subject` muss ein Objekt sein",
      "`steps` muss eine Liste sein",
    ]);
  });

  it("says what is wrong with a policy, what was wanted and the mend", () => {
    const text = [
      "tenbar: 1",
      'policy: { id: lowmere/daily, title: Tägliche Prüfung, version: "1", status: local }',
      "deference: Örtliche Anordnungen stehen über dieser Richtlinie.",
      "tolerances:",
      "  leak: { accept: { at-most: true }, basis: { kind: common-practice } }",
      "checks:",
      "  daily:",
      "    order: any",
      "    steps:",
      "      - { step: charge, kind: reading, quantity: pressure, tolerance: leek }",
      "      - { step: whistle, kind: confirm, attestible: true }",
    ].join("\n");
    const { policy, diagnostics } = compilePolicy(text, { words: german });
    expect(policy).toBeUndefined();
    expect(diagnostics.map(({ line, code, message, wanted, mend }) => [line, code, message, wanted, mend])).toEqual([
      [
        5,
        "read/wrong-type",
        "wahr oder falsch (`true`) kann hier nicht stehen",
        expect.stringContaining("Grenzwert (eine Größe wie `10 bar`"),
        "schreiben wie `10 bar`",
      ],
      [
        11,
        "read/unknown-key",
        "der Schlüssel `attestible` ist hier nicht bekannt",
        expect.stringMatching(/^eines von `step`, /),
        "`attestable` schreiben",
      ],
    ]);
    const mended = text.replace("at-most: true", "at-most: 10 bar").replace("attestible", "attestable");
    expect(compilePolicy(mended, { words: german }).diagnostics.map(({ message, mend }) => [message, mend])).toEqual([
      ["nicht bekannt: Toleranz `leek`", "`leak` schreiben"],
    ]);
  });

  it("says the limits of a form", async () => {
    const form = describeCheck(
      await loadLowmere(),
      "daily",
      { kind: "set", id: "S-011", ratedPressure: "300 bar", role: "front-line" },
      { at: "2026-04-14", words: german },
    );
    const accepted = form?.steps.flatMap(({ asked }) =>
      asked.flatMap(({ limits }) => limits.map(({ accept }) => accept)),
    );
    expect(accepted).toContain("höchstens 3 s");
    expect(accepted?.filter((accept) => accept !== undefined && /least|most|above|below/.test(accept))).toEqual([]);
  });

  it("leaves the policy's own words as they are written", async () => {
    const policy = await loadLowmere();
    const inGerman = describeCheck(policy, "daily", {}, { words: german });
    const inEnglish = describeCheck(policy, "daily", {});
    expect(inGerman?.deference).toBe(policy.plan.deference);
    expect(inGerman?.steps.map(({ ask }) => ask)).toEqual(inEnglish?.steps.map(({ ask }) => ask));
  });
});
