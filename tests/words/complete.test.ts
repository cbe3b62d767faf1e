import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";

/** One text taken out of German, or made to speak of what the code does not have: each must not compile. */
const SPOILT = [
  { file: "german-findings.ts", from: /^ {2}missing: .*\n/m, to: "" },
  { file: "german-remarks.ts", from: /^ {2}"step\/not-done": .*\n/m, to: "" },
  { file: "german-remarks.ts", from: "({ fitting }) =>", to: "({ step: fitting }) =>" },
  { file: "german-limits.ts", from: /^ {2}notPast: .*\n/m, to: "" },
  { file: "german-limits.ts", from: /^ {2}"no-steps": .*\n/m, to: "" },
  { file: "german-json.ts", from: /^ {2}singleQuote: .*\n/m, to: "" },
  { file: "german-json.ts", from: /^ {4}colon: .*\n/m, to: "" },
  { file: "german-program.ts", from: /^ {4}inputTwice: .*\n/m, to: "" },
  { file: "german-program.ts", from: /^ {4}noDay: .*\n/m, to: "" },
  { file: "german-reports.ts", from: /^ {4}inAll: .*\n/m, to: "" },
  { file: "german-names.ts", from: /^ {2}undecided: .*\n/m, to: "" },
  { file: "german-read-text-texts.ts", from: /^ {2}"read\/empty": \{[\s\S]*?\n {2}\},\n/m, to: "" },
  { file: "german-read-text-texts.ts", from: /^ {4}mend: \(\) => "die Zeile löschen",\n/m, to: "" },
  {
    file: "german-plan-step-texts.ts",
    from: "({ defect, consequence }) =>",
    to: "({ fault: defect, consequence }) =>",
  },
  { file: "german-things.ts", from: /^ {2}tolerance: .*\n/m, to: "" },
  { file: "german-schema-texts.ts", from: /^ {2}Tolerance: .*\n/m, to: "" },
] as const;

const FOLDER = resolve("src/german");

describe("a language that is not whole", () => {
  const options = readOptions();

  it("is told from one that is", () => {
    expect(findErrors(options, undefined)).toEqual([]);
  });

  it.each(SPOILT)("does not compile: $file, $from", (spoilt) => {
    expect(findErrors(options, spoilt).length).toBeGreaterThan(0);
  });
});

function readOptions(): ts.CompilerOptions {
  const { config } = ts.readConfigFile("tsconfig.json", ts.sys.readFile);
  return { ...ts.parseJsonConfigFileContent(config, ts.sys, ".").options, noEmit: true, noUnusedLocals: false };
}

const parsed = new Map<string, ts.SourceFile | undefined>();

/** What the compiler says of the German catalogue with one of its files changed. */
function findErrors(options: ts.CompilerOptions, spoilt: (typeof SPOILT)[number] | undefined): readonly string[] {
  const host = ts.createCompilerHost(options);
  const changed = spoilt === undefined ? "" : resolve(FOLDER, spoilt.file);
  const read = host.getSourceFile;
  const program = ts.createProgram([resolve(FOLDER, "german.ts")], options, {
    ...host,
    getSourceFile(file, language) {
      if (spoilt === undefined || resolve(file) !== changed) {
        if (!parsed.has(file)) parsed.set(file, read(file, language));
        return parsed.get(file);
      }
      const text = readFileSync(changed, "utf8");
      const other = text.replace(spoilt.from, spoilt.to);
      expect(other).not.toBe(text);
      return ts.createSourceFile(file, other, language);
    },
  });
  return ts.getPreEmitDiagnostics(program).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}
