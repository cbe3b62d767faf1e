import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/index.js";
import { renderAnnotations } from "../../src/report/index.js";
import { diagnose, MISTAKEN_POLICIES, SOUND_POLICIES } from "./policy-mistakes.js";

interface Annotation {
  readonly level: string;
  readonly properties: Readonly<Record<string, string>>;
  readonly message: string;
}

/** The inverse of the escapes, in the order that undoes them. */
function unescapeMessage(text: string): string {
  return text.replaceAll("%0A", "\n").replaceAll("%0D", "\r").replaceAll("%25", "%");
}

function unescapeProperty(text: string): string {
  return unescapeMessage(text.replaceAll("%3A", ":").replaceAll("%2C", ","));
}

/** Reads one line as a runner of workflows does: up to the second `::` the command and its properties, then the message. */
function readAnnotation(line: string): Annotation {
  const match = /^::(\w+) (.*?)::(.*)$/.exec(line);
  if (match === null) throw new Error(`no annotation: ${line}`);
  const [, level = "", list = "", message = ""] = match;
  const properties = list.split(",").map((pair): [string, string] => {
    const [name = "", ...value] = pair.split("=");
    return [name, unescapeProperty(value.join("="))];
  });
  return { level, properties: Object.fromEntries(properties), message: unescapeMessage(message) };
}

function readAnnotations(text: string): readonly Annotation[] {
  return text.split("\n").slice(0, -1).map(readAnnotation);
}

function sample(): Diagnostic {
  const [first] = diagnose("");
  if (first === undefined) throw new Error("there is no diagnostic");
  return first;
}

// The form and its escapes are those of the documentation of workflow commands, from memory.
describe("annotations", () => {
  it.each(MISTAKEN_POLICIES)("of %s are one line each, and say what the diagnostics say", (_name, policy) => {
    const diagnostics = diagnose(policy);
    const read = readAnnotations(renderAnnotations(diagnostics));
    expect(read.map(({ level, properties }) => ({ level, ...properties }))).toEqual(
      diagnostics.map(({ severity, file, line, column, endLine, endColumn, code }) => ({
        level: severity,
        file,
        line: String(line),
        col: String(column),
        endLine: String(endLine),
        endColumn: String(endColumn),
        title: code,
      })),
    );
    for (const [index, { message, wanted, mend }] of diagnostics.entries()) {
      const [first, ...others] = read[index]?.message.split("\n") ?? [];
      expect(first).toBe(message);
      if (wanted !== undefined) expect(others).toContain(`wanted: ${wanted}`);
      if (mend !== undefined) expect(others).toContain(`mend: ${mend}`);
    }
  });

  it.each(SOUND_POLICIES)("of %s, which has no mistake, are none", (_name, policy) => {
    expect(renderAnnotations(diagnose(policy))).toBe("");
  });

  it("name the other place of a mistake", () => {
    const read = readAnnotations(renderAnnotations(diagnose("tenbar: 1\ntenbar: 1\n")));
    expect(read.find(({ properties }) => properties["title"] === "read/duplicate-key")?.message).toContain(
      "\nsee also lowmere.yaml:1:1: the first one",
    );
  });

  it("escape what would end a property, the properties or the line", () => {
    const text = renderAnnotations([{ ...sample(), file: "a,b::c%2C\n.yaml", message: "50 %\r\n::error::gone" }]);
    expect(text).toMatch(/^::error file=a%2Cb%3A%3Ac%252C%0A\.yaml,line=1,/);
    expect(text).toContain("::50 %25%0D%0A::error::gone");
    expect(text.trimEnd().split("\n")).toHaveLength(1);
  });

  it("give any file and message back unchanged", () => {
    const printable = fc.string({ unit: fc.constantFrom(..."a%:,=\r\n25ACD0 Ü") });
    fc.assert(
      fc.property(printable, printable, (file, message) => {
        const [read] = readAnnotations(renderAnnotations([{ ...sample(), file, message, wanted: "w" }]));
        expect(read?.properties["file"]).toBe(file);
        expect(read?.message.startsWith(`${message}\nwanted: w`)).toBe(true);
      }),
    );
  });

  it("cannot drive the terminal that shows the log", () => {
    const text = renderAnnotations([{ ...sample(), file: "a\u001b[2J", message: "b\u001b]0;c\u0007" }]);
    expect([..."\u001b\u0007"].filter((one) => text.includes(one))).toEqual([]);
    expect(text).toContain("file=a\uFFFD[2J,");
  });
});
