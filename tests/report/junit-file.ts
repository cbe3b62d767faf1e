import { XMLParser, XMLValidator } from "fast-xml-parser";
import * as z from "zod";
import { JUNIT_FOOT, JUNIT_HEAD } from "../../src/report/index.js";

const failureModel = z.strictObject({ "@_type": z.string(), "@_message": z.string(), "#text": z.string().optional() });
const caseModel = z.strictObject({
  "@_classname": z.string(),
  "@_name": z.string(),
  failure: failureModel.optional(),
  error: failureModel.optional(),
  skipped: z.strictObject({ "@_message": z.string() }).optional(),
  "system-out": z.string().optional(),
  "#text": z.string().regex(/^\s*$/).optional(),
});
const suiteModel = z.strictObject({
  "@_name": z.string(),
  "@_tests": z.coerce.number(),
  "@_failures": z.coerce.number(),
  "@_errors": z.coerce.number(),
  "@_skipped": z.coerce.number(),
  "@_timestamp": z.string().optional(),
  properties: z.looseObject({
    property: z.array(z.strictObject({ "@_name": z.string(), "@_value": z.string() })),
  }),
  testcase: z.array(caseModel),
  "system-out": z.string().optional(),
  "#text": z.string().regex(/^\s*$/).optional(),
});
const fileModel = z.looseObject({
  testsuites: z.looseObject({ "@_name": z.literal("tenbar"), testsuite: z.array(suiteModel).default([]) }),
});

export type ReadSuite = z.infer<typeof suiteModel>;

/** The suites of a file, read back by a parser; throws where the file is no XML or holds anything else. */
export function readSuites(text: string): readonly ReadSuite[] {
  const valid = XMLValidator.validate(text);
  if (valid !== true) throw new Error(`${valid.err.msg} in line ${valid.err.line}`);
  const parser = new XMLParser({
    ignoreAttributes: false,
    parseAttributeValue: false,
    parseTagValue: false,
    trimValues: false,
    htmlEntities: true,
    processEntities: { enabled: true, maxTotalExpansions: Number.POSITIVE_INFINITY },
    // Why: one property, test case or suite is a list as well, and what has no attributes and no text an object.
    isArray: (name) => ["testsuite", "property", "testcase"].includes(name),
  });
  return fileModel.parse(parser.parse(text)).testsuites.testsuite;
}

/** One suite as the file of a run would hold it. */
export function readSuite(suite: string): ReadSuite {
  const [read, another] = readSuites(JUNIT_HEAD + suite + JUNIT_FOOT);
  if (read === undefined || another !== undefined) throw new Error("there is not one suite");
  return read;
}
