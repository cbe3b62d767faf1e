import type { Form } from "tenbar";
import { addBox, addElement, addRadios, addText, type Owner, type TextControl } from "./controls.js";
import { explainDate, explainInstant, explainQuantity, recordInstant, recordQuantity } from "./explain-text.js";
import { makeId } from "./make-id.js";

type FormStep = Form["steps"][number];
type Field = FormStep["fields"][number];

/** One field of the page: what the record gets of it, and its typed texts. */
export interface PageField {
  readonly key: string;
  /** Undefined where nothing was filled in. */
  readonly read: () => unknown;
  readonly texts: readonly TextControl[];
}

/** Where a field stands and what it needs of its step. */
export interface FieldPlace {
  readonly owner: Owner;
  /** Makes the id of a control of this step. */
  readonly id: (...words: readonly string[]) => string;
  /** The id of the question. */
  readonly question: string;
  readonly defects: FormStep["defects"];
  /** The instant of the check. */
  readonly at: string;
}

/** The record's keys in a wearer's words. */
const WORDS: Readonly<Record<string, string>> = {
  on: "date, such as 2026-04-14",
  start: "at the start",
  end: "at the end",
  held: "held for",
  elapsed: "after",
  defect: "which defect",
};

const nameKey = (key: string): string => WORDS[key] ?? key.replaceAll("-", " ");
const spell = (word: string): string => word.replaceAll("-", " ");
const alwaysRead = (): undefined => undefined;

/** Adds the controls of one field; each has a label of its own. */
export function addField(field: Field, place: FieldPlace): PageField {
  const { owner, id, at } = place;
  const { key } = field;
  switch (field.type) {
    case "choice":
      return addChoice(key, field.words, place);
    case "flag": {
      const box = addBox("did not occur", owner, id(key));
      return { key, texts: [], read: () => (box.read() === undefined ? undefined : false) };
    }
    case "quantity": {
      const [unit = ""] = field.units;
      const label = unit === "" ? nameKey(key) : `${nameKey(key)}, in ${unit}`;
      const text = addText(key, label, owner, id(key), (typed) => explainQuantity(typed, field.units));
      return readOne(text, (typed) => recordQuantity(typed, unit));
    }
    case "date":
      return readOne(addText(key, nameKey(key), owner, id(key), explainDate), (typed) => typed);
    case "places": {
      const texts = field.places.map((name) => addText(name, spell(name), owner, id(key, name), alwaysRead));
      return readSeveral(key, texts, (typed) => typed);
    }
    case "events": {
      const texts = field.events.map((name) =>
        addText(name, `or clock at ${spell(name)}, such as 07:10:30`, owner, id(key, name), explainInstant),
      );
      return readSeveral(key, texts, (typed) => recordInstant(typed, at));
    }
    case "text":
      return readOne(addText(key, nameKey(key), owner, id(key), alwaysRead), (typed) => typed);
  }
}

function readOne(text: TextControl, record: (typed: string) => string): PageField {
  const read = () => {
    const typed = text.read();
    return typed === undefined ? undefined : record(typed);
  };
  return { key: text.key, texts: [text], read };
}

function readSeveral(key: string, texts: readonly TextControl[], record: (typed: string) => string): PageField {
  const read = () => {
    const filled = texts.flatMap((text) => {
      const typed = text.read();
      return typed === undefined ? [] : [[text.key, record(typed)] as const];
    });
    return filled.length === 0 ? undefined : Object.fromEntries(filled);
  };
  return { key, texts, read };
}

/** The answer to the question itself stands in the group of the step; a further choice gets a group of its own. */
function addChoice(key: string, words: readonly string[], { owner, id, question, defects }: FieldPlace): PageField {
  const options = words.map((word) => ({
    word,
    label: defects.find(({ name }) => name === word)?.title ?? spell(word),
  }));
  if (key === "result") return { key, texts: [], ...addRadios(options, owner.element, id(key), question) };
  const group = addElement(owner.element, "fieldset", "inner");
  const legend = addElement(group, "legend", "", nameKey(key));
  legend.id = `${id(key)}/${makeId("legend")}`;
  return { key, texts: [], ...addRadios(options, group, id(key), `${legend.id} ${question}`) };
}
