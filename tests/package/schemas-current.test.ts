import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { MODELS } from "../../src/model/index.js";
import { buildSchema, renderSchemas } from "../../src/workshop/model-schemas.js";

const RENDERED = renderSchemas(MODELS);

describe("the published schemas", () => {
  it("are those of the models, one each", () => {
    expect(readdirSync("schemas").sort()).toEqual([...RENDERED.keys()].sort());
  });

  it.each([...RENDERED])("hold in %s what the model says; `npm run generate` writes it", (file, text) => {
    expect(readFileSync(join("schemas", file), "utf8")).toBe(text);
  });

  // Source: JSON Schema draft 2020-12, core and validation meta-schemas, as shipped with ajv.
  it.each(Object.entries(MODELS))("are sound JSON Schema 2020-12: %s", (name, model) => {
    const ajv = new Ajv2020({ strict: true, strictRequired: false, discriminator: true });
    expect(ajv.validateSchema(buildSchema(name, model))).toBe(true);
    expect(() => ajv.compile(buildSchema(name, model))).not.toThrow();
  });
});
