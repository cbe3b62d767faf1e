import type { Form } from "tenbar";
import { addElement } from "./controls.js";
import { addField, type PageField } from "./fields.js";
import { makeId } from "./make-id.js";

type FormStep = Form["steps"][number];
type Limit = FormStep["asked"][number]["limits"][number];

/** One step of the page, or one member of it: its fields, and where to say what it comes to. */
export interface PageStep {
  readonly step: string;
  readonly part: string | undefined;
  readonly question: string;
  readonly isRequired: boolean;
  readonly fields: readonly PageField[];
  readonly state: HTMLElement;
  /** The id of the element that holds it, for links. */
  readonly id: string;
}

/** Adds a step once, or once for each member that it is asked of; nothing to fill in where it is not asked. */
export function addStep(step: FormStep, owner: HTMLElement, at: string): readonly PageStep[] {
  if (step.applies === "no") {
    addUnasked(step, owner);
    return [];
  }
  const parts = step.asked.filter(({ part }) => part !== undefined);
  return (parts.length === 0 ? [undefined] : parts.map(({ part }) => part)).map((part) =>
    addPart(step, part, owner, at),
  );
}

/** Says that a step is not asked, and why, so that its absence is never taken for an oversight. */
function addUnasked({ step, ask, reason }: FormStep, owner: HTMLElement): void {
  const section = addElement(owner, "div", "step unasked");
  addElement(section, "p", "question", ask ?? step);
  addElement(section, "p", "state", `Not asked${reason === undefined ? "" : `: ${reason.replaceAll("-", " ")}`}.`);
}

/**
 * Why: several controls under one question make a group, which a reader names once; one figure with its box does not, and bears
 * the question in its own name.
 */
function isGroup({ fields }: FormStep): boolean {
  return fields.length > 2 || fields.some(({ type }) => type === "choice" || type === "places" || type === "events");
}

function addPart(step: FormStep, part: string | undefined, owner: HTMLElement, at: string): PageStep {
  const id = (...words: readonly string[]) => makeId(step.step, part ?? "", ...words);
  const grouped = isGroup(step);
  const element = addElement(owner, grouped ? "fieldset" : "div", "step");
  element.id = id("step");
  const words = `${step.ask ?? step.step}${part === undefined ? "" : ` (${part})`}`;
  const question = addElement(element, grouped ? "legend" : "p", "question", words);
  question.id = id("question");
  const limits = describeLimits(step, part);
  if (limits !== "") addElement(element, "p", "limit", limits).id = id("limits");
  const state = document.createElement("p");
  state.className = "state";
  state.id = id("state");
  const described = `${limits === "" ? "" : `${id("limits")} `}${state.id}`;
  if (grouped) element.setAttribute("aria-describedby", described);
  const place = {
    owner: { element, question: grouped ? undefined : question.id, described },
    id,
    question: question.id,
    defects: step.defects,
    at,
  };
  const fields = step.fields.map((field) => addField(field, place));
  element.append(state);
  return { step: step.step, part, question: words, isRequired: step.applies === "yes", fields, state, id: element.id };
}

/** The requirements in a wearer's words. */
const REQUIREMENTS: Readonly<Record<string, string>> = {
  start: "at the start",
  lasting: "held for",
  drop: "fall",
  rise: "rise",
  change: "change",
  apart: "between one and the next",
};

/** A member's own limits, and those across all members where there are several. */
function describeLimits({ asked }: FormStep, part: string | undefined): string {
  const members = asked.filter((one) => one.part !== undefined);
  const own = asked.filter((one) => one.part === part || (one.part === undefined && members.length > 1));
  const words = own.flatMap(({ limits }) => limits).flatMap(describeLimit);
  return words.length === 0 ? "" : `Limit: ${words.join("; ")}.`;
}

function describeLimit({ requirement, accept, reason }: Limit): readonly string[] {
  // Why: the question of a condition says itself what is to be satisfactory.
  if (requirement === "condition") return [];
  const name = REQUIREMENTS[requirement];
  if (accept !== undefined) return [name === undefined ? accept : `${name} ${accept}`];
  return reason === undefined ? [] : [`the limit cannot be told, ${reason.replaceAll("-", " ")}`];
}

/** The record step; undefined where nothing was filled in. */
export function readStep({ step, part, fields }: PageStep): Readonly<Record<string, unknown>> | undefined {
  const filled = fields.map(({ key, read }) => [key, read()] as const).filter(([, value]) => value !== undefined);
  if (filled.length === 0) return undefined;
  return { step, ...(part === undefined ? {} : { of: part }), ...Object.fromEntries(filled) };
}
