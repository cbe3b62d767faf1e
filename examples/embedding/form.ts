import type { Form } from "tenbar";
import { type Assessment, evaluate, type Policy, restorePlan } from "tenbar/plan";
import { addField, type ReadField } from "./fields.js";

type FormStep = Form["steps"][number];
type Entry = Record<string, unknown>;

/** One step of the page: how to read what was filled in, and where to say what it comes to. */
interface PageStep {
  readonly step: string;
  readonly part: string | undefined;
  readonly read: () => Entry;
  readonly state: HTMLElement;
}

const VERDICTS = {
  meets: "Meets the policy",
  refer: "Refer to a competent person",
  withdraw: "Withdraw from use",
} as const;

const find = (id: string): HTMLElement => {
  const element = document.getElementById(id);
  if (element === null) throw new Error(`the page has no ${id}`);
  return element;
};

const fetchJson = async (path: string): Promise<unknown> => (await fetch(path)).json();

/** Builds the form from its description, and judges with the saved plan as it is filled. */
async function start(): Promise<void> {
  const [plan, form, subject, sample] = await Promise.all(
    ["plan.json", "form.json", "subject.json", "sample.json"].map(fetchJson),
  );
  const { policy, problem } = restorePlan(plan);
  if (policy === undefined) throw new Error(problem);
  const described = form as Form;
  const page = described.steps.flatMap((step) => (step.applies === "no" ? addUnasked(step) : addStep(step)));
  find("title").textContent = described.title ?? described.check;
  find("subject").textContent = `Set ${(subject as { id: string }).id}, Lowmere 1, 14 April 2026`;
  find("deference").textContent = described.deference;
  find("cautions").replaceChildren(...described.cautions.map(makeItem));
  addButton();
  const judge = (partial: boolean) => evaluate(policy, makeRecord(page, described, subject), { partial });
  const show = () => {
    hideOutcome();
    showProgress(judge(true), page);
  };
  find("check").addEventListener("input", show);
  find("check").addEventListener("submit", (event) => {
    event.preventDefault();
    show();
    showOutcome(judge(false));
  });
  show();
  if (new URLSearchParams(location.search).get("fill") === "sample") fillSample(sample as Entry[], policy);
}

/** Says that a step is not asked, and why, so that its absence is never taken for an oversight. */
function addUnasked({ step, ask, reason }: FormStep): readonly PageStep[] {
  const section = document.createElement("div");
  section.className = "unasked";
  const question = document.createElement("p");
  question.textContent = ask ?? step;
  const why = document.createElement("p");
  why.className = "state";
  why.textContent = `Not asked${reason === undefined ? "" : `: ${reason.replaceAll("-", " ")}`}`;
  section.append(question, why);
  find("check").append(section);
  return [];
}

function makeItem(text: string): HTMLElement {
  const item = document.createElement("li");
  item.textContent = text;
  return item;
}

/** Why: a verdict speaks of what was filled in when it was given, and of nothing filled in since. */
function hideOutcome(): void {
  find("outcome").hidden = true;
}

function addButton(): void {
  const button = document.createElement("button");
  button.textContent = "Finish the check";
  find("check").append(button);
}

/** A step once, or once for each member that it is asked of. */
function addStep(step: FormStep): readonly PageStep[] {
  const parts = step.asked.filter(({ part }) => part !== undefined);
  return (parts.length === 0 ? [undefined] : parts.map(({ part }) => part)).map((part) => addFieldset(step, part));
}

function addFieldset(step: FormStep, part: string | undefined): PageStep {
  const fieldset = document.createElement("fieldset");
  const legend = document.createElement("legend");
  legend.textContent = `${step.ask ?? step.step}${part === undefined ? "" : ` (${part})`}`;
  const limits = document.createElement("p");
  limits.className = "limit";
  const asked = step.asked.find((one) => one.part === part) ?? step.asked[0];
  limits.textContent = (asked?.limits ?? [])
    .filter(({ accept }) => accept !== undefined)
    .map(({ requirement, accept }) => `${requirement}: ${accept}`)
    .join("; ");
  const state = document.createElement("p");
  state.className = "state";
  state.id = `state-${step.step}-${part ?? ""}`;
  fieldset.setAttribute("aria-describedby", state.id);
  fieldset.append(legend, limits);
  const readers = step.fields.map((field) => addField(field, fieldset, `${step.step}-${part ?? ""}-${field.key}`));
  fieldset.append(state);
  find("check").append(fieldset);
  return { step: step.step, part, state, read: () => readStep(step.step, part, readers) };
}

function readStep(step: string, part: string | undefined, readers: readonly ReadField[]): Entry {
  const filled = readers.map((read) => read()).filter(([, value]) => value !== undefined);
  return { step, ...(part === undefined ? {} : { of: part }), ...Object.fromEntries(filled) };
}

function makeRecord(page: readonly PageStep[], { check }: Form, subject: unknown): unknown {
  return {
    tenbar: 1,
    id: "lm1-s011-0414",
    check,
    at: "2026-04-14T07:05:00+01:00",
    station: "Lowmere 1",
    by: { id: "W-201", competence: "wearer" },
    subject,
    steps: page
      .map(({ read }) => read())
      .filter((entry) => Object.keys(entry).some((key) => key !== "step" && key !== "of")),
    local: { shift: "white" },
  };
}

const OUTCOMES = {
  within: "Accepted",
  caution: "Accepted, close to the limit",
  outside: "Not accepted",
  undecided: "Cannot be judged",
  "not-applicable": "Not asked",
} as const;

function showProgress({ results, findings }: Assessment, page: readonly PageStep[]): void {
  let open = 0;
  for (const { step, part, state } of page) {
    const own = results.filter((result) => result.step === step && (result.part === undefined || result.part === part));
    const waiting = own.some(({ reason }) => reason === "not-yet");
    const worst =
      own.find(({ outcome }) => outcome === "outside") ??
      own.find(({ outcome, reason }) => outcome === "undecided" && reason !== "not-yet") ??
      own.find(({ outcome }) => outcome === "caution") ??
      own.find(({ outcome }) => outcome === "within");
    if (waiting) open += 1;
    const found = findings.find(
      (finding) => finding.step === step && finding.requirement === worst?.requirement && finding.part === worst?.part,
    );
    const words = worst === undefined || (waiting && worst.outcome === "within") ? "" : OUTCOMES[worst.outcome];
    state.textContent = found !== undefined && words !== "" ? `${words}: ${found.message.replaceAll("`", "")}` : words;
    state.dataset.outcome = words === "" ? "" : (worst?.outcome ?? "");
  }
  find("progress").textContent =
    open === 0 ? "Every step is filled in." : `${open} of ${page.length} steps are still to be filled in.`;
}

function showOutcome({ verdict, findings }: Assessment): void {
  const outcome = find("outcome");
  find("outcome-title").textContent = VERDICTS[verdict ?? "refer"];
  find("findings").replaceChildren(
    ...findings.map(({ consequence, step, part, message }) =>
      makeItem(
        `${[consequence, step, part].filter((word) => word !== undefined).join(", ")}: ${message.replaceAll("`", "")}`,
      ),
    ),
  );
  outcome.hidden = false;
  outcome.focus();
}

/** Fills in a sample as a hand would, through the controls, and finishes. */
function fillSample(entries: readonly Entry[], _policy: Policy): void {
  for (const entry of entries) {
    for (const [key, value] of Object.entries(entry)) fillControl(`${entry.step}-${entry.of ?? ""}-${key}`, value);
  }
  const form = find("check");
  form.dispatchEvent(new Event("input"));
  if (form instanceof HTMLFormElement) form.requestSubmit();
}

function fillControl(id: string, value: unknown): void {
  if (typeof value === "object" && value !== null) {
    for (const [key, member] of Object.entries(value)) fillControl(`${id}-${key}`, member);
    return;
  }
  const control = document.getElementById(id) ?? document.getElementById(`${id}-${String(value)}`);
  if (!(control instanceof HTMLInputElement)) return;
  if (control.type === "radio") control.checked = true;
  else control.value = String(value).replace(/ (bar|s|m)$/, "");
}

start().catch((error: unknown) => {
  find("progress").textContent = error instanceof Error ? error.message : String(error);
});
