// The policy schema is published in a form for editors, and checked by in another; both must accept the same policies.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { MODELS } from "../../src/model/index.js";
import { buildSchema } from "../../src/workshop/model-schemas.js";
import { SHAPE_MISTAKES } from "../read/shape-mistakes.js";
import { isFields, readFields } from "./fields.js";

const POLICIES = "policies/common-practice";
const FILES = [
  ...readdirSync(POLICIES).map((file) => join(POLICIES, file)),
  "examples/lowmere/policy.yaml",
  "tests/editor/every-kind.yaml",
];
const PUBLISHED = readFields(JSON.parse(readFileSync("schemas/policy.schema.json", "utf8")));

// Without any option beyond standard JSON Schema: whoever uses the schema needs none.
const acceptsPublished = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(PUBLISHED);
const acceptsChecked = new Ajv2020({ discriminator: true, strictRequired: false }).compile(
  buildSchema("policy", MODELS.policy),
);

/** The value with one part less, or replaced by what is seldom wanted there; one at a time. */
function* spoil(value: unknown): Generator<unknown> {
  yield null;
  yield "hold";
  yield 7;
  if (Array.isArray(value)) {
    for (const [index, member] of value.entries()) for (const other of spoil(member)) yield value.with(index, other);
    yield [];
  } else if (isFields(value)) {
    yield { ...value, unheard: 1 };
    for (const [key, member] of Object.entries(value)) {
      yield Object.fromEntries(Object.entries(value).filter(([name]) => name !== key));
      for (const other of spoil(member)) yield { ...value, [key]: other };
    }
  }
}

describe("the published schema of policies", () => {
  it.each(FILES)("accepts and refuses what the checked one does, whatever is spoilt in %s", (file) => {
    const policy: unknown = parse(readFileSync(file, "utf8"));
    expect([acceptsPublished(policy), acceptsChecked(policy)]).toEqual([true, true]);
    const counts = { accepted: 0, refused: 0 };
    for (const spoilt of spoil(policy)) {
      const accepts = acceptsPublished(spoilt);
      if (accepts !== acceptsChecked(spoilt)) expect.fail(`the schemas differ in ${JSON.stringify(spoilt)}`);
      counts[accepts ? "accepted" : "refused"] += 1;
    }
    expect(counts.accepted).toBeGreaterThan(20);
    expect(counts.refused).toBeGreaterThan(200);
  });

  it("refuses the same mistakes of shape", () => {
    const seen = SHAPE_MISTAKES.flatMap(([, text]) => {
      const policy: unknown = parse(text, { uniqueKeys: false, logLevel: "error" });
      return acceptsChecked(policy) ? [] : [acceptsPublished(policy)];
    });
    expect(seen.length).toBeGreaterThan(40);
    expect(new Set(seen)).toEqual(new Set([false]));
  });

  it("has no choice by a keyword that is not JSON Schema's own", () => {
    expect(JSON.stringify(PUBLISHED)).not.toMatch(/"(discriminator|oneOf|defaultSnippets|markdownDescription)"/);
  });
});
