import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readFields } from "./fields.js";
import { listHelped } from "./list-helped.js";

const SCHEMA = readFields(JSON.parse(readFileSync("schemas/policy.schema.json", "utf8")));
const HELPED = listHelped(SCHEMA);
const KEYS = HELPED.filter(({ path }) => !/^\/\$defs\/[^/]+$/.test(path));

/** Shorter than this is a label, not help. */
const LEAST_LENGTH = 15;

describe("the help in the schema of policies", () => {
  it("is looked for at every key of a policy with a step of every kind", () => {
    const names = new Set(KEYS.map(({ key }) => key));
    const written = readFileSync("tests/editor/every-kind.yaml", "utf8").matchAll(
      /(?<=[\s{]|- )(?!yaml-)[a-z][a-z-]+(?=: )/g,
    );
    const authored = new Set(["role", "dial", "charge", "daily", "cover-torn", "requalified", "var", "station"]);
    for (const [key] of written) if (!authored.has(key)) expect([...names]).toContain(key);
    expect(names.size).toBeGreaterThan(90);
    expect(HELPED.length - KEYS.length).toBeGreaterThan(8);
  });

  it.each(HELPED)("stands at $path: `$help`", ({ help, key }) => {
    expect(help.length).toBeGreaterThanOrEqual(LEAST_LENGTH);
    // A sentence in words of its own: it begins like one and ends in a full stop, and is not the key said again.
    expect(help).toMatch(/^([A-Z]|`)[\s\S]*\.$/);
    expect(help.toLowerCase().replaceAll(/[^a-z]/g, "")).not.toBe(key.replaceAll("-", ""));
    expect((help.match(/`/g) ?? []).length % 2).toBe(0);
  });

  it("is no copy: a text belongs to one key", () => {
    const keysOf = new Map<string, Set<string>>();
    for (const { key, help } of KEYS) keysOf.set(help, (keysOf.get(help) ?? new Set()).add(key));
    const copied = [...keysOf].filter(([, keys]) => keys.size > 1).map(([help, keys]) => [help, ...keys]);
    expect(copied).toEqual([]);
  });

  it.each(KEYS.filter(({ words }) => words.length > 0))("explains every value at $path", ({ help, words }) => {
    for (const word of words) expect(help).toContain(`\`${word}\``);
    // Beyond the values themselves there are words about them.
    const own = words.reduce((text, word) => text.replaceAll(`\`${word}\``, ""), help);
    expect((own.match(/[a-z]{2,}/gi) ?? []).length).toBeGreaterThanOrEqual(2 * words.length);
  });

  it("never says that anything is safe", () => {
    for (const { help } of HELPED) expect(help).not.toMatch(/\bsafe/i);
  });
});
