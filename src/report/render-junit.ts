import { XMLBuilder } from "fast-xml-parser";
import type { Assessment, Finding, Result } from "../model/index.js";
import { parseRecordTime } from "../quantities/index.js";
import { type Consequence, weighConsequence } from "../terms/index.js";
import { assignFindings } from "./assign-findings.js";
import { createPaint } from "./palette.js";
import { replaceForbidden } from "./plain-characters.js";
import { renderFinding } from "./render-finding.js";

interface Property {
  readonly "@_name": string;
  readonly "@_value": string;
}

interface Failure {
  readonly "@_type": string;
  readonly "@_message": string;
  readonly "#text": string;
}

interface TestCase {
  readonly "@_classname": string;
  readonly "@_name": string;
  readonly failure?: Failure;
  readonly error?: Failure;
  readonly skipped?: { readonly "@_message": string };
  readonly "system-out"?: string;
}

interface Suite {
  readonly name: string;
  readonly at?: string | undefined;
  readonly properties: readonly Property[];
  readonly cases: readonly TestCase[];
  readonly remarks?: string;
}

const LOOKS = { color: false, width: 100 } as const;

/** What stands before the first suite. */
export const JUNIT_HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="tenbar">\n';
/** What stands behind the last suite. */
export const JUNIT_FOOT = "</testsuites>\n";

/**
 * One record as a suite of test cases: one for each result, one for each remark that weighs `refer` or more, and an error where the
 * record was not judged.
 *
 * Invariant: there is a failure or an error exactly where the verdict is not `meets`.
 *
 * @param at the time that the record states; left out where it is none
 */
export function renderSuite(assessment: Assessment, at: string | undefined): string {
  const { recordId, check, results } = assessment;
  const { ofResult, remarks } = assignFindings(assessment);
  const light = remarks.filter((remark) => !isFailing(remark));
  return writeSuite({
    name: [recordId ?? "a record without an id", ...(check === null ? [] : [check])].join(", "),
    at: parseRecordTime(at) === undefined ? undefined : at,
    properties: listProperties(assessment),
    cases: [
      ...describeProblems(assessment),
      ...results.map((result) => describeResult(result, ofResult.get(result) ?? [], assessment)),
      ...remarks.filter(isFailing).map((remark) => ({
        "@_classname": nameClass(remark, assessment),
        "@_name": [remark.code, ...(remark.part === undefined ? [] : [remark.part])].join(" "),
        failure: describeFailure([remark], assessment),
      })),
    ],
    remarks: light.map((remark) => describeBody(remark, assessment)).join("\n"),
  });
}

/** Something that could not be read as a record, as a suite with one error. */
export function renderUnreadSuite(problem: string, deference: string): string {
  const error = { "@_type": "not-read", "@_message": problem, "#text": problem };
  return writeSuite({
    name: "not read",
    properties: [{ "@_name": "deference", "@_value": deference }],
    cases: [{ "@_classname": "record", "@_name": "can be read", error }],
  });
}

function listProperties({ subject, verdict, policy, engine, deference }: Assessment): readonly Property[] {
  const { id, version, digest } = policy;
  const named = { subject, verdict, policy: id, "policy-version": version, "policy-digest": digest, engine, deference };
  return Object.entries(named).flatMap(([name, value]) =>
    value === null ? [] : [{ "@_name": name, "@_value": value }],
  );
}

/** Why a record could not be judged at all. */
function describeProblems({ judged, problems = [], check }: Assessment): readonly TestCase[] {
  if (judged) return [];
  const told = problems.map(({ pointer, message }) => (pointer === "" ? message : `${message} (at ${pointer})`));
  const error = {
    "@_type": "not-judged",
    "@_message": `cannot be judged: ${told.join("; ")}`,
    "#text": told.join("\n"),
  };
  return [{ "@_classname": check ?? "record", "@_name": "can be judged", error }];
}

function describeResult(result: Result, findings: readonly Finding[], assessment: Assessment): TestCase {
  const { requirement, part, outcome, reason = "" } = result;
  const head = {
    "@_classname": nameClass(result, assessment),
    "@_name": [requirement, ...(part === undefined ? [] : [part])].join(" "),
  };
  const failing = findings.filter(isFailing);
  if (failing.length > 0) return { ...head, failure: describeFailure(failing, assessment) };
  if (outcome === "not-applicable") return { ...head, skipped: { "@_message": reason } };
  if (outcome === "within") return head;
  const told = findings.map((finding) => describeBody(finding, assessment));
  return { ...head, "system-out": [[outcome, reason].join(" ").trim(), ...told].join("\n") };
}

function isFailing({ consequence }: { readonly consequence: Consequence }): boolean {
  return weighConsequence(consequence) >= weighConsequence("refer");
}

function describeFailure(findings: readonly Finding[], assessment: Assessment): Failure {
  return {
    "@_type": findings[0]?.code ?? "",
    "@_message": findings.map(({ message }) => message).join("; "),
    "#text": findings.map((finding) => describeBody(finding, assessment)).join("\n\n"),
  };
}

function describeBody(finding: Finding, assessment: Assessment): string {
  return renderFinding(finding, assessment, LOOKS, createPaint(LOOKS)).join("\n").trim();
}

/** `daily/leak`; of an interval or a rule, its name with the word before it. */
function nameClass({ step, interval, rule }: Result | Finding, { check }: Assessment): string {
  const named = { step, interval: interval && `interval ${interval}`, rule: rule && `rule ${rule}` };
  return [check ?? "record", ...Object.values(named).filter((name) => name !== undefined)].join("/");
}

function writeSuite({ name, at, properties, cases, remarks = "" }: Suite): string {
  const count = (key: "failure" | "error" | "skipped") => cases.filter((one) => one[key] !== undefined).length;
  // Why: the package would escape no line ends, which a reader of attributes then takes for blanks.
  const builder = new XMLBuilder({
    ignoreAttributes: false,
    suppressBooleanAttributes: false,
    suppressEmptyNode: true,
    format: true,
    processEntities: false,
    tagValueProcessor: (_name, value) => escapeText(String(value)),
    attributeValueProcessor: (_name, value) => escapeAttribute(String(value)),
  });
  return builder.build({
    testsuite: {
      "@_name": name,
      "@_tests": cases.length,
      "@_failures": count("failure"),
      "@_errors": count("error"),
      "@_skipped": count("skipped"),
      ...(at === undefined ? {} : { "@_timestamp": at }),
      properties: { property: properties },
      testcase: cases,
      ...(remarks === "" ? {} : { "system-out": remarks }),
    },
  });
}

function escapeText(text: string): string {
  return replaceForbidden(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll("\r", "&#13;");
}

/** Quotes are left to the package. */
function escapeAttribute(text: string): string {
  return escapeText(text).replaceAll("\t", "&#9;").replaceAll("\n", "&#10;");
}
