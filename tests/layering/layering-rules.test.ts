import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { z } from "zod";

const cruiseResult = z.object({
  summary: z.object({
    violations: z.array(z.object({ from: z.string(), rule: z.object({ name: z.string() }) })),
  }),
});

/** A small house that keeps every rule. */
const SOUND_TREE = {
  "src/terms/index.ts": 'export { WORD } from "./word.js";\n',
  "src/terms/word.ts": 'export const WORD = "word";\n',
  "src/model/index.ts": 'import * as z from "zod";\nexport const textModel = z.string();\nexport type Text = string;\n',
  "src/read/index.ts":
    'import { parse } from "yaml";\nexport const readText = (text: string): unknown => parse(text);\n',
  "src/files/index.ts":
    'import { readFileSync } from "node:fs";\nexport const load = (path: string) => readFileSync(path);\n',
  "src/evaluate/index.ts":
    'import type { Text } from "../model/index.js";\nimport { WORD } from "../terms/index.js";\nexport const judge = (text: Text): boolean => text === WORD;\n',
  "src/report/index.ts":
    'import { XMLBuilder } from "fast-xml-parser";\nexport const render = (): string => new XMLBuilder().build({ a: 1 });\n',
  "src/node.ts": 'export { load } from "./files/index.js";\n',
  "src/plan-entry.ts": 'export { judge } from "./evaluate/index.js";\n',
  "src/index.ts": 'export { judge } from "./evaluate/index.js";\n',
} as const;

/** What a file of the faulty tree holds, and the rules that must name that file. */
const PLANTED_FAULTS = [
  {
    file: "src/evaluate/reads-a-policy.ts",
    text: 'import { readText } from "../read/index.js";\nreadText("");\n',
    rules: ["evaluate-imports", "evaluate-never-loads-rooms", "evaluate-never-loads-packages"],
  },
  {
    file: "src/evaluate/loads-the-model.ts",
    text: 'import { textModel } from "../model/index.js";\ntextModel.parse("");\n',
    rules: ["evaluate-imports", "evaluate-never-loads-rooms", "evaluate-never-loads-packages"],
  },
  {
    file: "src/evaluate/enters-by-the-window.ts",
    text: 'import { WORD } from "../terms/word.js";\nexport { WORD };\n',
    rules: ["through-the-door"],
  },
  {
    file: "src/evaluate/uses-a-parser.ts",
    text: 'import { parse } from "yaml";\nparse("");\n',
    rules: ["evaluate-packages", "evaluate-never-loads-packages"],
  },
  {
    file: "src/evaluate/writes-a-table.ts",
    text: 'import { stringify } from "csv-stringify/sync";\nstringify([]);\n',
    rules: ["evaluate-packages", "evaluate-never-loads-packages"],
  },
  {
    file: "src/node.ts",
    text: 'export { render } from "./report/index.js";\n',
    rules: ["node.ts-imports", "node.ts-never-loads-packages", "node.ts-never-loads-rooms"],
  },
  {
    file: "src/evaluate/asks-the-machine.ts",
    text: 'import { hostname } from "node:os";\nhostname();\n',
    rules: ["evaluate-node", "evaluate-never-loads-node"],
  },
  {
    file: "src/evaluate/asks-the-machine-otherwise.ts",
    text: 'import { hostname } from "os";\nhostname();\n',
    rules: ["evaluate-node", "evaluate-never-loads-node"],
  },
  {
    file: "src/terms/knows-the-model.ts",
    text: 'import type { Text } from "../model/index.js";\nexport type Fault = Text;\n',
    rules: ["terms-imports-types"],
  },
  {
    file: "src/terms/imports-nothing-there.ts",
    text: 'import { GONE } from "./gone.js";\nexport { GONE };\n',
    rules: ["resolvable"],
  },
  { file: "src/terms/circle-a.ts", text: 'export { B as A } from "./circle-b.js";\n', rules: ["no-cycle"] },
  // Why: a circle is reported once, at the file it is first met in.
  { file: "src/terms/circle-b.ts", text: 'export { A as B } from "./circle-a.js";\n', rules: [] },
  {
    file: "src/read/comes-in-from-outside.ts",
    text: 'import { judge } from "../index.js";\njudge("");\n',
    rules: ["index.ts-used-by"],
  },
  {
    file: "src/plan-entry.ts",
    text: 'export { readText } from "./read/index.js";\n',
    rules: ["plan-entry.ts-imports", "plan-entry.ts-never-loads-packages"],
  },
  {
    file: "src/index.ts",
    text: 'export { judge } from "./evaluate/index.js";\nexport { load } from "./files/index.js";\nexport { WORD } from "./terms/word.js";\n',
    rules: ["doors-through-the-door", "index.ts-imports", "index.ts-never-loads-node"],
  },
] as const;

describe("the rules about imports", () => {
  it("let a sound tree pass", () => {
    expect(cruiseTree(SOUND_TREE)).toEqual([]);
  });

  const violations = cruiseTree({
    ...SOUND_TREE,
    ...Object.fromEntries(PLANTED_FAULTS.map(({ file, text }) => [file, text])),
  });
  const cases = PLANTED_FAULTS.flatMap(({ file, rules }) => rules.map((rule) => ({ file, rule })));

  it.each(cases)("$rule names $file", ({ file, rule }) => {
    expect(violations).toContainEqual({ file, rule });
  });

  it("name no file without a fault", () => {
    const faulty = new Set<string>(PLANTED_FAULTS.map(({ file }) => file));
    expect(violations.filter(({ file }) => !faulty.has(file))).toEqual([]);
  });
});

interface Violation {
  readonly file: string;
  readonly rule: string;
}

/** What both rule files find in a tree of these files. */
function cruiseTree(files: Readonly<Record<string, string>>): readonly Violation[] {
  const root = mkdtempSync(join(tmpdir(), "layering-"));
  try {
    for (const [file, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, file)), { recursive: true });
      writeFileSync(join(root, file), text);
    }
    symlinkSync(resolve("node_modules"), join(root, "node_modules"));
    return [".dependency-cruiser.cjs", ".dependency-cruiser-runtime.cjs"].flatMap((file) => runCruiser(root, file));
  } finally {
    rmSync(root, { recursive: true });
  }
}

function runCruiser(root: string, ruleFile: string): readonly Violation[] {
  const program = resolve("node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const run = spawnSync(process.execPath, [program, "--config", resolve(ruleFile), "--output-type", "json", "src"], {
    cwd: root,
    encoding: "utf8",
  });
  const { violations } = cruiseResult.parse(JSON.parse(run.stdout)).summary;
  return violations.map(({ from, rule }) => ({ file: from, rule: rule.name }));
}
