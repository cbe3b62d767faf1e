import * as z from "zod";
import { writeForEditors } from "./editor-schema.js";
import { nameDefinitions } from "./name-definitions.js";

/** The models that are published as JSON Schemas, by name. */
export type ModelTable = Readonly<Record<string, z.ZodType>>;

type SchemaOverride = NonNullable<NonNullable<Parameters<typeof z.toJSONSchema>[1]>["override"]>;

/**
 * The JSON Schema (draft 2020-12) of a model, with titles, descriptions and examples from its `.meta()`.
 * Its `$id` is a tag, so it claims no domain and nothing tries to fetch it.
 */
export function buildSchema(name: string, model: z.ZodType): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(model, {
    target: "draft-2020-12",
    io: "input",
    reused: "ref",
    override: markDiscriminator,
  });
  const { $schema, ...rest } = nameDefinitions({ ...schema });
  return { $schema, $id: `tag:tenbar,2026:${name}`, ...rest };
}

/** What people write in an editor; everything else is written by programs. */
const EDITED: ReadonlySet<string> = new Set(["policy"]);

/** The text of every `schemas/<name>.schema.json`, by file name. */
export function renderSchemas(models: ModelTable): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(models).map(([name, model]) => {
      const schema = buildSchema(name, model);
      const published = EDITED.has(name) ? writeForEditors(schema) : schema;
      return [`${name}.schema.json`, `${JSON.stringify(published, null, 2)}\n`];
    }),
  );
}

/**
 * Says in the schema which key tells the members of a discriminated union apart.
 * Why: under a plain `oneOf` one misspelt key is reported once for every member; with the keyword it is one error.
 */
const markDiscriminator: SchemaOverride = ({ zodSchema, jsonSchema }) => {
  const tag = "discriminator" in zodSchema._zod.def ? zodSchema._zod.def.discriminator : undefined;
  if (typeof tag !== "string" || jsonSchema.oneOf === undefined) return;
  jsonSchema.type = "object";
  jsonSchema["discriminator"] = { propertyName: tag };
  jsonSchema.required = [tag];
};
