import type { ExplainText } from "./explain-text.js";
import { makeId } from "./make-id.js";

/** What a control belongs to: where it is put, and what is said of it. */
export interface Owner {
  readonly element: HTMLElement;
  /** The ids of question and part, where no group around the control says them. */
  readonly question: string | undefined;
  /** The ids of what describes the control: the limits, and what the step comes to. */
  readonly described: string;
}

/** One typed text of the page. */
export interface TextControl {
  readonly key: string;
  readonly read: () => string | undefined;
  /** What is said beside the control; empty where its text can be read. */
  readonly reason: () => string;
  /** Says beside the control why its text cannot be read, or takes that back; gives whether it can be read. */
  readonly explain: (reason?: string) => boolean;
  readonly setRequired: (isRequired: boolean) => void;
}

/** One choice of the page, none of which need be made. */
export interface ChoiceControl {
  readonly read: () => string | undefined;
}

export function addElement<K extends keyof HTMLElementTagNameMap>(
  owner: HTMLElement,
  tag: K,
  className: string,
  text = "",
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (className !== "") element.className = className;
  element.textContent = text;
  owner.append(element);
  return element;
}

function describe(control: HTMLElement, id: string, caption: HTMLElement, owner: Owner, reason = ""): void {
  caption.id = `${id}/caption`;
  if (owner.question !== undefined) control.setAttribute("aria-labelledby", `${owner.question} ${caption.id}`);
  const described = [reason, owner.described].filter((ids) => ids !== "").join(" ");
  if (described !== "") control.setAttribute("aria-describedby", described);
}

export function addText(key: string, label: string, owner: Owner, id: string, explainText: ExplainText): TextControl {
  const row = addElement(owner.element, "div", "field");
  const caption = addElement(row, "label", "caption", label);
  const control = document.createElement("input");
  control.type = "text";
  control.id = id;
  control.autocomplete = "off";
  control.spellcheck = false;
  caption.htmlFor = id;
  row.append(control);
  const reason = addElement(row, "p", "reason");
  reason.id = `${id}/reason`;
  describe(control, id, caption, owner, reason.id);
  const read = () => (control.value.trim() === "" ? undefined : control.value.trim());
  return {
    key,
    read,
    reason: () => reason.textContent,
    explain: (given) => {
      const text = read();
      const words = given ?? (text === undefined ? undefined : explainText(text));
      reason.textContent = words === undefined ? "" : `Cannot be read: ${words}.`;
      control.setAttribute("aria-invalid", String(words !== undefined));
      return words === undefined;
    },
    setRequired: (isRequired) => {
      control.setAttribute("aria-required", String(isRequired));
    },
  };
}

/** A single box, asked only where something never came; silence says nothing. */
export function addBox(label: string, owner: Owner, id: string): ChoiceControl {
  const row = addElement(owner.element, "div", "field");
  const caption = addElement(row, "label", "option");
  const control = document.createElement("input");
  control.type = "checkbox";
  control.id = id;
  caption.append(control, addElement(caption, "span", "", label));
  describe(control, id, caption, owner);
  return { read: () => (control.checked ? label : undefined) };
}

/** One of several words, and a button that takes the choice back, since a radio button has no way of its own. */
export function addRadios(
  options: readonly { readonly word: string; readonly label: string }[],
  owner: HTMLElement,
  id: string,
  question: string,
): ChoiceControl {
  const row = addElement(owner, "div", "field");
  const controls = options.map(({ word, label }) => {
    const caption = addElement(row, "label", "option");
    const control = document.createElement("input");
    control.type = "radio";
    control.name = id;
    control.id = `${id}/${makeId(word)}`;
    control.value = word;
    caption.append(control, addElement(caption, "span", "", label));
    return control;
  });
  const clear = addElement(row, "button", "clear", "clear");
  clear.type = "button";
  clear.id = `${id}/clear`;
  clear.setAttribute("aria-labelledby", `${clear.id} ${question}`);
  const showClear = () => {
    clear.hidden = controls.every(({ checked }) => !checked);
  };
  showClear();
  row.addEventListener("input", showClear);
  clear.addEventListener("click", () => {
    for (const control of controls) control.checked = false;
    const [first] = controls;
    first?.focus();
    for (const type of ["input", "change"]) first?.dispatchEvent(new Event(type, { bubbles: true }));
  });
  return { read: () => controls.find(({ checked }) => checked)?.value };
}
