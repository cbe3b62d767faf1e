import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { scanStyle } from "./scan-style.js";

const SOURCES = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((file) => join("src", file).replaceAll("\\", "/"))
  .filter((file) => file.endsWith(".ts") && !file.startsWith("src/read/generated/"))
  .sort();

describe("the style of src", () => {
  it.each(SOURCES)("is kept by %s", (file) => {
    expect(scanStyle(file, readFileSync(file, "utf8"))).toEqual([]);
  });

  it("keeps files short: the median at most 80 lines, nine in ten at most 200", () => {
    const lengths = SOURCES.map((file) => readFileSync(file, "utf8").split("\n").length - 1).sort((a, b) => a - b);
    expect(lengths[Math.floor(lengths.length / 2)]).toBeLessThanOrEqual(80);
    expect(lengths[Math.floor(lengths.length * 0.9)]).toBeLessThanOrEqual(200);
  });
});

const FORBIDDEN = [
  ["cast", "const a = b as string;"],
  ["cast", "const a = <string>b;"],
  ["cast", "// Boundary:\nconst a = b as string;"],
  ["cast", "// Boundary: parsed text\n\nconst a = b as string;"],
  ["non-null", "const a = b!;"],
  ["default-export", "export default 1;"],
  ["default-export", "export default function judge() {}"],
  ["default-export", "const a = 1;\nexport { a as default };"],
  ["import-without-js", 'import { a } from "./a";'],
  ["import-without-js", 'export { a } from "../a.ts";'],
  ["export-star", 'export * from "./a.js";'],
  ["function-too-long", `function a() {\n${"b();\n".repeat(49)}}`],
  ["function-too-long", `const a = () => {\n${"b();\n".repeat(49)}};`],
  ["file-too-long", "b();\n".repeat(351)],
  ["silenced", "// @ts-ignore\nb();"],
  ["banner", "// ---------- parts\nb();"],
  ["module-state", "let a = 1;"],
  ["module-state", "const a = new Map<string, string>();"],
  ["module-state", "export const a: string[] = [];"],
  ["engine-own-math", "const a = Math.exp(1);"],
  ["clock", "const a = new Date();"],
  ["clock", "const a = Date.now();"],
  ["clock", "const a = Temporal.Now.instant();"],
  ["machine", "const a = process.cwd();"],
  ["machine", "console.log(1);"],
] as const;

const ALLOWED = [
  "const a = [1] as const;",
  "// Boundary: the text was checked above\nconst a = b as string;",
  "const a = b as string; // Boundary: the text was checked above",
  `function a() {\n${"b();\n".repeat(48)}}`,
  "b();\n".repeat(350),
  'const a: ReadonlyMap<string, string> = new Map([["a", "b"]]);',
  "function a() {\n  let b = 1;\n  return b;\n}",
  "const a = Math.sqrt(2);",
  "const a = new Date(0);",
  "const a = step.process;",
  'import { a } from "./a.js";',
];

describe("the scan for style", () => {
  it.each(FORBIDDEN)("finds %s in `%s`", (rule, text) => {
    expect(scanStyle("src/evaluate/a.ts", text).map((fault) => fault.rule)).toContain(rule);
  });

  it.each(ALLOWED)("finds nothing in `%s`", (text) => {
    expect(scanStyle("src/evaluate/a.ts", text)).toEqual([]);
  });

  it("lets the command line know the clock and the process", () => {
    expect(scanStyle("src/cli/a.ts", "const a = [new Date(), process.argv];")).toEqual([]);
  });

  it("gives the line of the fault", () => {
    expect(scanStyle("src/evaluate/a.ts", "b();\n\nconst a = b as string;\n")).toEqual([{ rule: "cast", line: 3 }]);
  });
});
