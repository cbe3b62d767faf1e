import { type Assessment, evaluate } from "tenbar/plan";
import { addElement } from "./controls.js";
import { fillSample, isEntries } from "./fill-sample.js";
import { fetchJson, loadPage, type Page } from "./load-page.js";
import { addStep, type PageStep, readStep } from "./page-step.js";
import { beginSentence, showMessage, showProgress } from "./show-progress.js";

const VERDICTS = {
  meets: "Meets the policy",
  refer: "Refer to a competent person",
  withdraw: "Withdraw from use",
} as const;

function find(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`the page has no ${id}`);
  return element;
}

/** Why: what is said again unchanged would be read out again. */
function say(id: string, text: string): void {
  const element = find(id);
  if (element.textContent !== text) element.textContent = text;
}

/** Says why nothing is judged here, and shows no form that would look as if it were. */
function showProblem(problem: string): void {
  find("check").hidden = true;
  say("progress", "");
  say("problem", `Nothing is judged on this page: ${problem}.`);
}

async function start(): Promise<void> {
  const { value: page, problem } = await loadPage();
  if (page === undefined) return showProblem(problem);
  const form = find("check");
  if (!(form instanceof HTMLFormElement)) throw new Error("the check is no form");
  showHead(page);
  const steps = page.form.steps.flatMap((step) => addStep(step, form, page.head.at));
  addElement(form, "button", "finish", "Finish the check").id = "finish";
  listen(form, page, steps);
  if (new URLSearchParams(location.search).get("fill") !== "sample") return;
  const sample = await fetchJson("sample.json", "the sample", isEntries);
  if (sample.value === undefined) say("problem", `Nothing is filled in: ${sample.problem}.`);
  else fillSample(sample.value, form);
}

function showHead({ form, head }: Page): void {
  const day = new Date(`${head.at.slice(0, 10)}T12:00:00Z`).toLocaleDateString("en-GB", {
    dateStyle: "long",
    timeZone: "UTC",
  });
  find("title").textContent = form.title ?? form.check;
  find("subject").textContent = `Set ${head.subject.id}, ${head.station}, ${day}`;
  find("deference").textContent = form.deference;
  for (const caution of form.cautions) addElement(find("cautions"), "li", "", caution);
}

/** Judges at every key, tells a listener when a field is left, and gives the verdict when the check is finished. */
function listen(form: HTMLFormElement, { policy, form: { check }, head }: Page, steps: readonly PageStep[]): void {
  const judge = (partial: boolean): Assessment => {
    const entries = steps.map(readStep).filter((entry) => entry !== undefined);
    return evaluate(policy, { ...head, tenbar: 1, check, steps: entries }, { partial });
  };
  let takenBack = "";
  const show = () => {
    // Why: a verdict speaks of what was filled in when it was given, and of nothing filled in since.
    if (!find("outcome").hidden) takenBack = "The verdict is taken back. ";
    find("outcome").hidden = true;
    say("announcement", "");
    say("progress", showProgress(judge(true), steps));
  };
  form.addEventListener("input", show);
  form.addEventListener("change", ({ target }) => {
    const own = steps.find(({ id }) => target instanceof Element && find(id).contains(target));
    const reasons = own?.fields.flatMap(({ texts }) =>
      texts.flatMap(({ reason }) => (reason() === "" ? [] : [reason()])),
    );
    const state = own?.state.textContent ?? "";
    say("announcement", `${takenBack}${[...(reasons ?? []), state].join(" ")} ${find("progress").textContent}`.trim());
    takenBack = "";
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    show();
    takenBack = "";
    showOutcome(judge(false), steps);
  });
  show();
}

function showOutcome({ verdict, findings, problems = [] }: Assessment, steps: readonly PageStep[]): void {
  const outcome = find("outcome");
  const title = VERDICTS[verdict ?? "refer"];
  find("outcome-title").textContent = title;
  find("findings").replaceChildren();
  for (const { message } of problems) addElement(find("findings"), "li", "", showMessage(message));
  for (const { consequence, step, part, message } of findings) {
    const item = addElement(find("findings"), "li", "", `${beginSentence(consequence)}: ${showMessage(message)}. `);
    const own = steps.find((one) => one.step === step && (part === undefined || one.part === part));
    if (own !== undefined) addLink(item, own);
  }
  outcome.hidden = false;
  outcome.focus();
  const count = findings.length + problems.length;
  say("announcement", `${title}. ${count === 0 ? "No findings" : count === 1 ? "1 finding" : `${count} findings`}.`);
}

/** A link from a finding to the first control of its step. */
function addLink(item: HTMLElement, { id, question }: PageStep): void {
  const link = addElement(item, "a", "", question);
  link.href = `#${find(id).querySelector("input")?.id ?? id}`;
}

start().catch((error: unknown) => {
  showProblem(`the page failed, ${error instanceof Error ? error.message : String(error)}`);
});
