import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { dropAnnotations, shareParts, shortenTexts } from "../../src/workshop/shrink-schema.js";

const text = {
  type: "string",
  minLength: 1,
  maxLength: 20,
  title: "A text",
  description: "Short. It is read.",
  examples: ["a", "b"],
};
const schema = {
  type: "object",
  properties: { title: text, description: text, count: { type: "integer", description: "How many. Never none." } },
  required: ["title"],
  additionalProperties: false,
};

describe("a schema without annotations", () => {
  it("keeps the keys that are named like them", () => {
    const { properties } = dropAnnotations(schema);
    const bare = { type: "string", minLength: 1, maxLength: 20 };
    expect(properties).toEqual({ title: bare, description: bare, count: { type: "integer" } });
  });
});

describe("a schema with shortened texts", () => {
  it("keeps of a text its title, the first sentence and the first example, and of all else no sentence", () => {
    const short = { ...text, description: "Short", examples: ["a"] };
    expect(shortenTexts(schema)["properties"]).toEqual({
      title: short,
      description: short,
      count: { type: "integer" },
    });
  });
});

describe("a description that no message quotes", () => {
  const own = { description: "Its own" };
  const said = { description: "Said" };
  const definitions = { plain: { type: "string" }, described: { type: "string", ...said }, listed: { enum: ["a"] } };
  it.each([
    [{ enum: ["a", "b"], type: "string" }, false],
    [{ const: "a", type: "string" }, false],
    [{ type: "object" }, false],
    [{ type: "string" }, true],
    [{ anyOf: [{ type: "string" }, { type: "null" }] }, true],
    [{ $ref: "#/$defs/plain" }, true],
    [{ $ref: "#/$defs/described" }, false],
    [{ $ref: "#/$defs/listed" }, false],
  ])("of %j is kept: %s", (part, isKept) => {
    const { properties } = shortenTexts({
      type: "object",
      properties: { part: { ...part, ...own } },
      $defs: definitions,
    });
    expect(properties).toEqual({ part: isKept ? { ...part, ...own } : part });
  });
});

describe("a schema with shared parts", () => {
  const shared = shareParts(dropAnnotations(schema));

  it("says a repeated part once", () => {
    expect(JSON.stringify(shared).split('"maxLength":20')).toHaveLength(2);
  });

  it("accepts the same and refuses the same", () => {
    const [whole, shorter] = [schema, shared].map((one) => new Ajv2020({ strict: false }).compile(one));
    const values = [
      { title: "a" },
      { title: "" },
      { title: "a", description: 1 },
      { description: "a" },
      { title: "a", count: 1.5 },
    ];
    expect(values.map((value) => shorter?.(value))).toEqual([true, false, false, false, false]);
    expect(values.map((value) => whole?.(value))).toEqual(values.map((value) => shorter?.(value)));
  });
});
