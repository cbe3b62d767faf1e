import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { english } from "../../src/english/index.js";
import { german } from "../../src/german/index.js";
import { sayEverything } from "./say-everything.js";

/** Sentences that stand by themselves in both languages, with a full stop. */
const SENTENCES: ReadonlySet<string> = new Set(["report reach"]);

/** What an English sentence itself puts in backticks. */
const OWN_QUOTES: ReadonlySet<string> = new Set(["`'it''s'`", "`nothing`"]);

/** Sample values: words with `p-`, and numbers that no sentence has of its own. */
const VALUES = /[%&*!]?p-[a-z]+(?:@\d+)?|70\d\d|0?\.?71|U\+[0-9A-F]{4}|JsonLogic/g;

const ENGLISH = new Map([...sayEverything(english)].filter(([path]) => path !== "policyText schema"));
const GERMAN = sayEverything(german);

/** A text without what its params brought in, and without the policy's and the notation's own words. */
const sayOwn = (text: string): string => text.replaceAll(/`[^`]*`/g, "").replaceAll(VALUES, "");

describe("the German catalogue", () => {
  it("has a text wherever the English one has one, and no other", () => {
    const withoutSchema = [...GERMAN.keys()].filter((path) => !path.startsWith("policyText schema"));
    expect(withoutSchema.sort()).toEqual([...ENGLISH.keys()].sort());
    expect(ENGLISH.size).toBeGreaterThan(700);
  });

  it.each([...ENGLISH])("says %s in words of its own", (path, text) => {
    const said = GERMAN.get(path) ?? text;
    const isBare = !/[a-z]{2}/i.test(sayOwn(text));
    // Why: what is nothing but signs and the words of an author is the same in every language.
    expect(said === text).toBe(isBare);
  });

  it.each([...ENGLISH])("loses nothing that %s speaks of", (path, text) => {
    const said = GERMAN.get(path) ?? "";
    const written = (text.match(/`[^`]+`/g) ?? []).filter((word) => !OWN_QUOTES.has(word));
    for (const value of [...(text.match(VALUES) ?? []), ...written]) expect(said).toContain(value);
  });

  it.each([...GERMAN])("writes %s as a part of a sentence", (path, text) => {
    expect(text.endsWith(".")).toBe(SENTENCES.has(path));
    expect(text).not.toMatch(/[Ss]icher|undefined|NaN|\[object/);
    expect((text.match(/`/g) ?? []).length % 2).toBe(0);
  });
});

describe("a catalogue", () => {
  it.each([english, german])("of $language names every consequence in at most ten columns", ({ consequences }) => {
    for (const word of Object.values(consequences)) expect(word.length).toBeLessThanOrEqual(10);
  });

  it.each([english, german])("of $language quotes the schema of policies in all its texts", ({ policyText }) => {
    const listed = listSchemaTexts(JSON.parse(readFileSync("schemas/policy.schema.json", "utf8")));
    expect(listed.size).toBeGreaterThan(50);
    // A text that the schema gained belongs in src/words/schema-texts.ts; every other language then lacks a key.
    if (policyText.schema !== "as-written") expect(new Set(Object.keys(policyText.schema))).toEqual(listed);
  });
});

/** Titles and first sentences that `describeExpected` may quote: not those of a closed list, whose values are listed instead. */
function listSchemaTexts(schema: unknown): ReadonlySet<string> {
  if (typeof schema !== "object" || schema === null) return new Set();
  const own: Readonly<Record<string, unknown>> = { ...schema };
  const { title, description, type } = own;
  const isClosed = own["enum"] !== undefined || own["const"] !== undefined;
  const quoted = typeof description === "string" && (type === "string" || own["anyOf"] !== undefined);
  return new Set([
    ...(!isClosed && typeof title === "string" ? [title] : []),
    ...(!isClosed && !Array.isArray(schema) && quoted ? [description.split(/\.(?:\s|$)/)[0] ?? ""] : []),
    ...Object.values(own).flatMap((member) => [...listSchemaTexts(member)]),
  ]);
}
