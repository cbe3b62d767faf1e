type Json = Readonly<Record<string, unknown>>;

/** Parts of a schema that hold values, not schemas. */
const VALUES: ReadonlySet<string> = new Set(["examples", "const", "enum"]);

/** Why: a key `then` that is written out would make the object look like something to wait for. */
const CONSEQUENT = "then";

/**
 * The same schema, accepting the same values, in the form that serves an editor best: a tagged choice as one condition
 * for each tag, and the help of a key where an editor finds it.
 * Why: of a plain choice an editor reports whichever member fits best by its guess, and may blame the tag for a
 * misspelt key; by conditions it reports the mistakes of the kind that was written, and only those.
 */
export function writeForEditors(schema: Json): Json {
  const definitions = expectObject(schema["$defs"]);
  return dropUnused(expectObject(rewrite(schema, definitions)));
}

/** Drops the definitions that nothing refers to any more. */
function dropUnused(schema: Json): Json {
  const text = JSON.stringify(schema);
  const used = Object.entries(expectObject(schema["$defs"])).filter(([name]) => text.includes(`"#/$defs/${name}"`));
  return { ...schema, $defs: Object.fromEntries(used) };
}

function rewrite(part: unknown, definitions: Json): unknown {
  if (Array.isArray(part)) return part.map((member) => rewrite(member, definitions));
  if (!isObject(part)) return part;
  const own = Object.fromEntries(
    Object.entries(part).map(([key, value]) => [key, VALUES.has(key) ? value : rewrite(value, definitions)]),
  );
  return writeConditions(leaveHelpToKey(own, definitions));
}

/** Writes `oneOf` members that a tag tells apart as the conditions of `allOf`. */
function writeConditions(part: Json): Json {
  const { oneOf, discriminator, ...rest } = part;
  const tag = isObject(discriminator) ? discriminator["propertyName"] : undefined;
  if (typeof tag !== "string" || !Array.isArray(oneOf)) return part;
  const members = oneOf.map((member) => ({ member, ...readTag(member, tag) }));
  return {
    ...rest,
    properties: {
      [tag]: {
        enum: members.map(({ value }) => value),
        description: members.map(({ help }) => help).join(" "),
      },
    },
    allOf: members.map(({ member, value }) => ({
      if: { properties: { [tag]: { const: value } }, required: [tag] },
      [CONSEQUENT]: member,
    })),
  };
}

function readTag(member: unknown, tag: string): { readonly value: string; readonly help: string } {
  const { const: value, description } = expectObject(expectObject(expectObject(member)["properties"])[tag]);
  if (typeof value !== "string" || typeof description !== "string") throw new Error("a tag has a value and its help");
  return { value, help: description };
}

/**
 * In a choice that is described as a whole, writes out members that refer to a definition without its own texts.
 * Why: an editor shows the texts of the member that fits before those of the key.
 */
function leaveHelpToKey(part: Json, definitions: Json): Json {
  const { anyOf, description } = part;
  if (!Array.isArray(anyOf) || typeof description !== "string") return part;
  return { ...part, anyOf: anyOf.map((member) => withoutTexts(expectObject(member), definitions)) };
}

function withoutTexts(member: Json, definitions: Json): Json {
  const { $ref } = member;
  if (typeof $ref !== "string") return member;
  const { title: _, description: __, examples: ___, ...rest } = expectObject(definitions[$ref.replace("#/$defs/", "")]);
  return rest;
}

function expectObject(value: unknown): Json {
  if (!isObject(value)) throw new Error("this part of a schema is an object");
  return value;
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
