import type { Assessment, Finding, Result } from "tenbar/plan";
import type { PageStep } from "./page-step.js";

const OUTCOMES = {
  within: "Accepted",
  caution: "Accepted, close to the limit",
  outside: "Not accepted",
  undecided: "Cannot be judged",
  "not-applicable": "Not asked",
} as const;

const WORST_FIRST = ["outside", "undecided", "caution", "within"] as const;

/** Which fields a requirement is judged by. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  level: ["reading"],
  start: ["start"],
  lasting: ["held"],
  drop: ["start", "end"],
  rise: ["start", "end"],
  change: ["start", "end"],
  elapsed: ["elapsed", "events"],
  date: ["on"],
};

/** The reasons that lie in how a text was written. */
const FAULTS = ["unreadable", "no-unit", "unknown-unit", "wrong-dimension", "too-fine"];

export const showMessage = (message: string): string => message.replaceAll("`", "");
export const beginSentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Says at each step what it comes to so far, beside each control what cannot be read, and gives the progress in words. */
export function showProgress({ results, findings }: Assessment, page: readonly PageStep[]): string {
  let open = 0;
  for (const step of page) {
    const isOwn = (one: Result | Finding) =>
      one.step === step.step && (one.part === undefined || one.part === step.part);
    const own = results.filter(isOwn);
    if (own.some(({ reason }) => reason === "not-yet")) open += 1;
    showState(step, own, findings.filter(isOwn));
    explainTexts(step, own, findings.filter(isOwn));
    markRequired(step);
  }
  const count = (outcome: string) => findings.filter((finding) => finding.outcome === outcome).length;
  const against = [
    [count("outside"), "not accepted"] as const,
    [count("undecided"), "cannot be judged"] as const,
    [count("caution"), "close to the limit"] as const,
  ].filter(([number]) => number > 0);
  const filled =
    open === 0
      ? "Every step is filled in."
      : `${open} of ${page.length} steps ${open === 1 ? "is" : "are"} still to be filled in.`;
  const soFar = against.map(([number, words]) => `${number} ${words}`).join(", ");
  return soFar === "" ? filled : `${filled} So far: ${soFar}.`;
}

/** The worst of the step in words: of several that are as bad, each. */
function showState({ state }: PageStep, own: readonly Result[], findings: readonly Finding[]): void {
  const waiting = own.some(({ reason }) => reason === "not-yet");
  const judged = own.filter(({ reason }) => reason !== "not-yet");
  const worst = WORST_FIRST.find((outcome) => judged.some((one) => one.outcome === outcome));
  const isSaid = worst !== undefined && !(waiting && worst === "within");
  const found = findings.filter(({ outcome }) => outcome === worst);
  state.dataset["outcome"] = isSaid ? worst : "";
  // Why: a group of radio buttons has no mark of its own for a reader that an answer is wanted.
  state.textContent = isSaid ? joinWords(worst, found) : waiting ? "Still to be filled in." : "";
}

function joinWords(outcome: keyof typeof OUTCOMES, found: readonly Finding[]): string {
  if (found.length === 0) return `${OUTCOMES[outcome]}.`;
  const messages = found.map(({ message }) => showMessage(message));
  if (outcome === "undecided") return messages.map((message) => `${beginSentence(message)}.`).join(" ");
  return `${OUTCOMES[outcome]}: ${messages.join("; and ")}.`;
}

/** The page's own words where it has any; else the library's, at every text that the requirement is judged by. */
function explainTexts({ fields }: PageStep, own: readonly Result[], findings: readonly Finding[]): void {
  for (const { texts } of fields) for (const text of texts) text.explain();
  for (const { requirement, reason } of own) {
    if (reason === undefined || !FAULTS.includes(reason)) continue;
    const keys = KEYS[requirement] ?? [];
    const judged = fields.filter(({ key }) => keys.includes(key)).flatMap(({ texts }) => texts);
    const filled = judged.filter((text) => text.read() !== undefined);
    if (filled.some((text) => !text.explain())) continue;
    const message = findings.find((finding) => finding.requirement === requirement)?.message;
    for (const text of filled) text.explain(showMessage(message ?? reason.replaceAll("-", " ")));
  }
}

/** Why: a reading is not wanted where it is said that it never came, nor a time where two instants tell it. */
function markRequired({ fields, isRequired }: PageStep): void {
  const isToldOtherwise = fields.some(
    ({ key, read }) => (key === "occurred" || key === "events") && read() !== undefined,
  );
  for (const { key, texts } of fields) {
    const isOptional = key === "events" || key === "defect" || isToldOtherwise;
    for (const text of texts) text.setRequired(isRequired && !isOptional);
  }
}
