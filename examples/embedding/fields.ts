import type { Form } from "tenbar";

type Field = Form["steps"][number]["fields"][number];

/** Reads one field of the page: its record key, and what was filled in; undefined where nothing was. */
export type ReadField = () => readonly [key: string, value: unknown];

/** The record's keys in a wearer's words. */
const WORDS: Readonly<Record<string, string>> = {
  on: "date, as 2026-04-14",
  reading: "reading",
  start: "at the start",
  end: "at the end",
  held: "held for",
  elapsed: "after",
  defect: "which defect",
  result: "found",
};

const nameKey = (key: string): string => WORDS[key] ?? key;

/** Adds the controls of one field; each has a label of its own. */
export function addField(field: Field, owner: HTMLElement, id: string): ReadField {
  switch (field.type) {
    case "choice":
      return addChoice(field.key, field.words, field.words, owner, id);
    case "flag":
      return addFlag(field.key, owner, id);
    case "quantity":
      return addQuantity(field.key, field.units[0] ?? "", owner, id);
    case "places":
      return addTexts(field.key, field.places, owner, id);
    case "events":
      return () => [field.key, undefined];
    default:
      return addText(field.key, nameKey(field.key), "text", owner, id, (text) => text);
  }
}

function addRow(owner: HTMLElement): HTMLElement {
  const row = document.createElement("div");
  row.className = "field";
  owner.append(row);
  return row;
}

function addText(
  key: string,
  label: string,
  type: string,
  owner: HTMLElement,
  id: string,
  read: (text: string) => unknown,
): ReadField {
  const row = addRow(owner);
  const control = document.createElement("input");
  control.type = type;
  control.id = id;
  control.autocomplete = "off";
  const caption = document.createElement("label");
  caption.htmlFor = id;
  caption.textContent = label;
  row.append(caption, control);
  return () => [key, control.value.trim() === "" ? undefined : read(control.value.trim())];
}

/** A bare number gets the unit that the label shows; anything else is recorded as it was typed. */
function addQuantity(key: string, unit: string, owner: HTMLElement, id: string): ReadField {
  const label = unit === "" ? nameKey(key) : `${nameKey(key)}, in ${unit}`;
  return addText(key, label, "text", owner, id, (text) =>
    /^-?\d+(\.\d+)?$/.test(text) && unit !== "" ? `${text} ${unit}` : text,
  );
}

function addTexts(key: string, places: readonly string[], owner: HTMLElement, id: string): ReadField {
  const readers = places.map((place) =>
    addText(place, place.replaceAll("-", " "), "text", owner, `${id}-${place}`, (text) => text),
  );
  return () => {
    const filled = readers.map((read) => read()).filter(([, text]) => text !== undefined);
    return [key, filled.length === 0 ? undefined : Object.fromEntries(filled)];
  };
}

function addChoice(
  key: string,
  words: readonly string[],
  values: readonly unknown[],
  owner: HTMLElement,
  id: string,
): ReadField {
  const row = addRow(owner);
  row.setAttribute("role", "radiogroup");
  row.setAttribute("aria-label", nameKey(key));
  const controls = words.map((word) => {
    const control = document.createElement("input");
    control.type = "radio";
    control.name = id;
    control.id = `${id}-${word}`;
    const caption = document.createElement("label");
    caption.append(control, ` ${word.replaceAll("-", " ")}`);
    row.append(caption);
    return control;
  });
  return () => [key, values[controls.findIndex(({ checked }) => checked)]];
}

/** Asked only where it never came; silence says nothing. */
function addFlag(key: string, owner: HTMLElement, id: string): ReadField {
  return addChoice(key, ["did not occur"], [false], owner, id);
}
