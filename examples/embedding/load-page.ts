import type { Form } from "tenbar";
import { type Policy, restorePlan } from "tenbar/plan";

/** The record before anything is found: what a station knows of the set, the day and the wearer. */
export interface RecordHead {
  readonly id: string;
  readonly at: string;
  readonly station: string;
  readonly subject: { readonly id: string };
}

export interface Page {
  readonly policy: Policy;
  readonly form: Form;
  readonly head: RecordHead;
}

/** What was fetched, or why there is none, in words for whoever looks at the page. */
export type Fetched<T> =
  | { readonly value: T; readonly problem: undefined }
  | { readonly value: undefined; readonly problem: string };

const fail = (problem: string) => ({ value: undefined, problem });

/** Fetches plan, form and head of the record; each failure says which of them it was and what happened. */
export async function loadPage(): Promise<Fetched<Page>> {
  const [plan, form, head] = await Promise.all([
    fetchJson("plan.json", "the plan", isPresent),
    fetchJson("form.json", "the form", isForm),
    fetchJson("record.json", "the head of the record", isHead),
  ]);
  if (plan.problem !== undefined) return plan;
  if (form.problem !== undefined) return form;
  if (head.problem !== undefined) return head;
  const { policy, problem } = restorePlan(plan.value);
  if (policy === undefined) return fail(`the plan was refused: ${problem}`);
  // Why: a form of another plan would show other limits than those that judge.
  if (policy.plan.digest !== form.value.policy.digest) return fail("the form belongs to another plan");
  return { value: { policy, form: form.value, head: head.value }, problem: undefined };
}

/** Fetches one file and checks that it is what it should be. */
export async function fetchJson<T>(
  path: string,
  name: string,
  isExpected: (value: unknown) => value is T,
): Promise<Fetched<T>> {
  const response = await fetch(path).catch(() => undefined);
  if (response === undefined) return fail(`${name} (${path}) could not be fetched: no answer came`);
  if (!response.ok) return fail(`${name} (${path}) could not be fetched: the server answered ${response.status}`);
  const value: unknown = await response.json().catch(() => undefined);
  if (value === undefined) return fail(`${name} (${path}) was fetched but is not JSON`);
  return isExpected(value) ? { value, problem: undefined } : fail(`${path} was fetched but is not ${name}`);
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

const isPresent = (value: unknown): value is unknown => value !== undefined;

/** By the marks that every form bears: it was written by the same build, so that its parts are not looked at again. */
function isForm(value: unknown): value is Form {
  return (
    isObject(value) &&
    value["tenbar"] === 1 &&
    value["kind"] === "form" &&
    isObject(value["policy"]) &&
    Array.isArray(value["steps"])
  );
}

function isHead(value: unknown): value is RecordHead {
  return (
    isObject(value) &&
    isObject(value["subject"]) &&
    [value["id"], value["at"], value["station"], value["subject"]["id"]].every((text) => typeof text === "string")
  );
}
