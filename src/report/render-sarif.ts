import type { Diagnostic } from "../diagnostics/index.js";
import { writeFileUri } from "./file-uri.js";
import { tellDiagnostic } from "./tell-diagnostic.js";

const SCHEMA = "https://raw.githubusercontent.com/oasis-tcs/sarif-spec/master/Schemata/sarif-schema-2.1.0.json";

export interface SarifOptions {
  /** Of the program. */
  readonly version: string;
  /** Why the file could not be read at all. */
  readonly problem?: { readonly file: string; readonly text: string };
}

/** Diagnostics as a log of one run in SARIF 2.1.0 (OASIS standard); without results where nothing could be read. */
export function renderSarif(diagnostics: readonly Diagnostic[], { version, problem }: SarifOptions): string {
  const codes = [...new Set(diagnostics.map(({ code }) => code))];
  const ruleIndex = new Map(codes.map((code, index) => [code, index]));
  const fingerprints = makeFingerprints(diagnostics);
  const run = {
    tool: { driver: { name: "tenbar", version, semanticVersion: version, rules: makeRules(diagnostics) } },
    invocations: [makeInvocation(problem)],
    columnKind: "utf16CodeUnits",
    // Why: an empty list would say that the policy was looked at and has no mistake.
    ...(problem === undefined
      ? {
          results: diagnostics.map((diagnostic, index) => ({
            ruleId: diagnostic.code,
            ruleIndex: ruleIndex.get(diagnostic.code),
            ...makeResult(diagnostic),
            partialFingerprints: { "codeAndLine/v1": fingerprints[index] },
          })),
        }
      : {}),
  };
  return `${JSON.stringify({ $schema: SCHEMA, version: "2.1.0", runs: [run] }, undefined, 2)}\n`;
}

/** The rules of the codes that occur, in the order of their first result. */
function makeRules(diagnostics: readonly Diagnostic[]) {
  const severities = new Map(diagnostics.map(({ code, severity }) => [code, severity]));
  return [...severities].map(([id, severity]) => ({
    id,
    shortDescription: makeMessage(id.slice(id.indexOf("/") + 1).replaceAll("-", " ")),
    defaultConfiguration: { level: severity },
  }));
}

function makeInvocation(problem: SarifOptions["problem"]) {
  if (problem === undefined) return { executionSuccessful: true };
  const { file, text } = problem;
  const notification = { level: "error", message: makeMessage(`${file}: ${text}`), locations: [makeLocation(file)] };
  return { executionSuccessful: false, toolExecutionNotifications: [notification] };
}

function makeResult(diagnostic: Diagnostic) {
  const { severity, file, line, column, endLine, endColumn, related = [] } = diagnostic;
  const region = { startLine: line, startColumn: column, endLine, endColumn };
  return {
    level: severity,
    message: makeMessage(tellDiagnostic(diagnostic)),
    locations: [makeLocation(file, region)],
    ...(related.length === 0 ? {} : { relatedLocations: related.map(makeRelated) }),
  };
}

function makeRelated({ file, line, column, message }: NonNullable<Diagnostic["related"]>[number]) {
  return { ...makeLocation(file, { startLine: line, startColumn: column }), message: makeMessage(message) };
}

function makeLocation(file: string, region?: Readonly<Record<string, number>>) {
  const artifactLocation = { uri: writeFileUri(file) };
  return { physicalLocation: { artifactLocation, ...(region === undefined ? {} : { region }) } };
}

/**
 * A text as a plain message says it: braces are doubled, since one stands for an argument (SARIF 2.1.0, 3.11.5, from memory), and
 * what would read as a link is broken up (3.11.6, from memory).
 */
function makeMessage(text: string) {
  return { text: text.replaceAll(/[{}]/g, "$&$&").replaceAll("](", "\\](") };
}

/** What a mistake is known by when lines above it come and go: its code and the line itself, numbered where both repeat. */
function makeFingerprints(diagnostics: readonly Diagnostic[]): readonly string[] {
  const counts = new Map<string, number>();
  return diagnostics.map(({ code, file, frame }) => {
    const line = frame.split("\n").at(-2) ?? "";
    const text = `${code}:${line.replace(/^ *\d+ \| ?/, "").trim()}`;
    const key = `${file}:${text}`;
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return `${text}:${count}`;
  });
}
