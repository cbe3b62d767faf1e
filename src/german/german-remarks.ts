import { OUTCOMES } from "../terms/index.js";
import type { RemarkTexts } from "../words/index.js";
import { GERMAN_OUTCOMES } from "./german-names.js";

/** What each remark says. Params are texts of the record or the policy. */
export const GERMAN_REMARKS: RemarkTexts = {
  "record/unknown-check": ({ check }) => `die Richtlinie kennt keine Prüfung \`${check}\``,
  "record/not-for-this-policy": ({ fact, found }) =>
    `die Richtlinie gilt nicht für ein Protokoll, in dem ${fact} \`${found}\` ist`,
  "record/not-for-this-check": ({ fact, found, check }) =>
    `die Prüfung \`${check}\` gilt nicht für ein Protokoll, in dem ${fact} \`${found}\` ist`,
  "record/scope-unknown": ({ fact, scope, found }) => {
    const what = scope === "check" ? "Prüfung" : "Richtlinie";
    const cause =
      found === ""
        ? `im Protokoll fehlt ${fact}`
        : `\`${found}\` steht im Protokoll für ${fact} und ist ein Wort der ${what} in anderer Schreibweise`;
    return `${cause}; ob diese ${what} dafür gilt, bleibt offen`;
  },
  "record/nothing-judged": () => "nichts Wesentliches ließ sich beurteilen",
  "record/outside-effective": ({ date, from, to }) =>
    `das Protokoll vom ${date} liegt außerhalb der Geltungsdauer der Richtlinie (${from} bis ${to})`,
  "record/no-digest": () => "das Protokoll hat keine kanonische Form und damit keine Prüfsumme",
  "record/unknown-key": ({ key }) => `der Schlüssel \`${key}\` ist nicht bekannt und wurde nicht beurteilt`,
  "record/unreadable-value": ({ key }) => `der Eintrag unter \`${key}\` ist nicht lesbar`,
  "record/unknown-step": ({ step }) =>
    `die Prüfung hat keinen Schritt \`${step}\`; was dort eingetragen ist, wurde nicht beurteilt`,
  "record/not-attestable": ({ step }) =>
    `\`${step}\` darf nicht zusammen mit anderem bestätigt werden; es braucht einen eigenen Nachweis`,
  "step/defect": ({ defect }) => `hier ist der Mangel \`${defect}\` eingetragen`,
  "step/not-done": () => "der Schritt ist als nicht durchgeführt eingetragen",
  "step/unknown-result": ({ recorded }) => `das Ergebnis \`${recorded}\` ist hier nicht vorgesehen`,
  "step/misspelt-key": ({ key, nearest }) =>
    `der Schlüssel \`${key}\` wurde nicht beurteilt; gemeint ist wohl \`${nearest}\``,
  "step/unused-evidence": ({ key }) =>
    `\`${key}\` ist kein Nachweis für einen Schritt dieser Art und wurde nicht beurteilt`,
  "step/trace-not-judged": () => "ein Verlauf ist aufgezeichnet; diese Version beurteilt keine Verläufe",
  "step/recorded-though-not-fitted": ({ fitting }) =>
    `\`${fitting}\` ist als nicht vorhanden eingetragen, trotzdem gibt es dafür einen Nachweis`,
  "step/adopted": sayAdopted,
  "interval/adopted": sayAdopted,
  "step/not-asked": ({ step }) => `\`${step}\` wird nur verlangt, solange eine Ausnahme gilt, und derzeit gilt keine`,
  "step/finer-than-division": () =>
    "diesen Wert kann das Messgerät nicht anzeigen; er liegt zwischen zwei Teilstrichen",
  "step/unknown-place": ({ place }) => `der Schritt fragt nicht nach der Stelle \`${place}\``,
  "step/more-likely-outside": ({ observed, accept, confidence }) =>
    `\`${observed}\` ist wie abgelesen zulässig (${accept}), der wahre Wert liegt aber nur mit einer Wahrscheinlichkeit von ${confidence} innerhalb`,
  "hold/counted-as-no-change": () =>
    "der Wert hat sich um höchstens einen Skalenteil in die andere Richtung geändert und gilt als unverändert",
};

function sayAdopted({ adoption, order, until, without }: Parameters<RemarkTexts["step/adopted"]>[0]): string {
  const outcome = OUTCOMES.find((one) => one === without);
  const otherwise = outcome === undefined ? without : GERMAN_OUTCOMES[outcome];
  return `beurteilt nach der Ausnahme \`${adoption}\` (${order}, bis ${until}); ohne sie: ${otherwise}`;
}
