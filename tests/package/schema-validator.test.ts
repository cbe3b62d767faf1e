import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import * as z from "zod";
import { buildSchema } from "../../src/workshop/model-schemas.js";
import { generateValidator } from "../../src/workshop/schema-validator.js";

const nameModel = z
  .string()
  .regex(/^[a-z]+$/)
  .meta({ title: "Name" });
const model = z.strictObject({
  first: nameModel,
  steps: z.array(
    z.discriminatedUnion("kind", [
      z.strictObject({ kind: z.literal("reading"), name: nameModel.optional(), limit: z.string() }),
      z.strictObject({ kind: z.literal("hold"), name: nameModel, toString: z.number() }),
    ]),
  ),
  free: z.json().optional(),
});

interface ShapeError {
  readonly instancePath: string;
  readonly keyword: string;
}

const schema = buildSchema("trial", model);
const generated = await generateValidator(schema, "validateTrial");
const loaded: { validateTrial: { (value: unknown): boolean; errors?: readonly ShapeError[] | null } } = await import(
  `data:text/javascript,${encodeURIComponent(generated.code)}`
);

function check(value: unknown): readonly string[] {
  if (loaded.validateTrial(value)) return [];
  return (loaded.validateTrial.errors ?? []).map(({ keyword, instancePath }) => `${keyword} ${instancePath}`);
}

const sound = { first: "a", steps: [{ kind: "reading", limit: "10 bar" }], free: [{ a: null }] };

describe("a generated validator", () => {
  it("accepts what the model accepts", () => {
    expect(check(sound)).toEqual([]);
  });

  it("reports one misspelt key of a discriminated union once", () => {
    expect(check({ ...sound, steps: [{ kind: "reading", limit: "10 bar", nmae: "a" }] })).toEqual([
      "additionalProperties /steps/0",
    ]);
  });

  it("reports an unknown tag once", () => {
    expect(check({ ...sound, steps: [{ kind: "wish" }] })).toEqual(["discriminator /steps/0"]);
  });

  it("misses a required key that every object has a method for", () => {
    expect(check({ ...sound, steps: [{ kind: "hold", name: "a" }] })).toEqual(["required /steps/0"]);
  });

  it("says the same as the schema compiled at run time", () => {
    const compiled = new Ajv2020({ discriminator: true, ownProperties: true, strictRequired: false }).compile(schema);
    const step = { kind: "hold", name: "a", toString: 1 };
    const values = [sound, {}, null, [], { ...sound, first: "A" }, { ...sound, steps: [step] }, { ...sound, extra: 1 }];
    for (const value of values) expect(check(value).length === 0).toBe(compiled(value));
  });

  it("names the packages whose code it carries", () => {
    expect(generated.packages).toEqual(["node_modules/ajv"]);
  });

  it("is the same when it is generated again", async () => {
    expect((await generateValidator(buildSchema("trial", model), "validateTrial")).code).toBe(generated.code);
  });
});

describe("a built schema", () => {
  it("keeps a titled part that is used twice under its title, and writes the others where they are used", () => {
    const { $defs } = schema;
    expect(Object.keys(Object($defs)).sort()).toEqual(["name", "value"]);
    expect(JSON.stringify(schema)).not.toContain("__schema");
  });

  it("lets every reference lead somewhere", () => {
    const names = [...JSON.stringify(schema).matchAll(/"\$ref":"#\/\$defs\/([^"]+)"/g)].map((match) => match[1]);
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(Object(schema["$defs"])).toHaveProperty([String(name)]);
  });
});
