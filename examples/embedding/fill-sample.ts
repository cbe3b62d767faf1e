import { isObject } from "./load-page.js";
import { makeId } from "./make-id.js";

type Entry = Readonly<Record<string, unknown>>;

export function isEntries(value: unknown): value is readonly Entry[] {
  return Array.isArray(value) && value.every(isObject);
}

/** Fills in a sample as a hand would, through the controls, and finishes. */
export function fillSample(entries: readonly Entry[], form: HTMLFormElement): void {
  for (const { step, of = "", ...found } of entries) {
    for (const [key, value] of Object.entries(found)) fillControl([String(step), String(of), key], value);
  }
  form.dispatchEvent(new Event("input"));
  form.requestSubmit();
}

function fillControl(words: readonly string[], value: unknown): void {
  if (isObject(value)) {
    for (const [key, member] of Object.entries(value)) fillControl([...words, key], member);
    return;
  }
  const control = document.getElementById(makeId(...words)) ?? document.getElementById(makeId(...words, String(value)));
  if (!(control instanceof HTMLInputElement)) return;
  if (control.type === "text") control.value = String(value).replace(/ (bar|s|m)$/, "");
  else control.checked = true;
  control.dispatchEvent(new Event("input", { bubbles: true }));
}
