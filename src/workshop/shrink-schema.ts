type Schema = Readonly<Record<string, unknown>>;

/** Keywords whose values are maps from a name, which may be any word, to a schema. */
const MAPS: ReadonlySet<string> = new Set(["properties", "$defs"]);
/** Keywords whose values are no schemas. */
const DATA: ReadonlySet<string> = new Set(["const", "enum", "discriminator", "required", "examples"]);
const ANNOTATIONS: ReadonlySet<string> = new Set(["title", "description", "examples"]);
/** Characters of a part below which a function of its own is larger than the part; measured with the schema of policies. */
const LEAST_SHARED = 40;

/** The schema without what only people read; it accepts the same. */
export function dropAnnotations(schema: Schema): Schema {
  return changeParts(schema, (part) =>
    Object.fromEntries(Object.entries(part).filter(([key]) => !ANNOTATIONS.has(key))),
  );
}

/**
 * The schema with no more of its texts than messages quote: titles, the first example, and the first sentence of the
 * description of what is written as a text of one's own.
 */
export function shortenTexts(schema: Schema): Schema {
  return changeParts(schema, (part) => {
    const { description, examples, ...rest } = part;
    return {
      ...rest,
      ...(typeof description === "string" && isQuoted(part, asSchema(schema["$defs"]))
        ? { description: description.split(/\.(?:\s|$)/)[0] }
        : {}),
      ...(Array.isArray(examples) ? { examples: examples.slice(0, 1) } : {}),
    };
  });
}

/** Whether messages quote a part's description: not beside a list of words, nor beside a reference to what has its own. */
function isQuoted(part: Schema, definitions: Schema): boolean {
  const { $ref: reference } = part;
  if (typeof reference === "string") {
    const target = asSchema(definitions[reference.replace("#/$defs/", "")]);
    return target["description"] === undefined && isQuoted(target, definitions);
  }
  if (part["enum"] !== undefined || part["const"] !== undefined) return false;
  return part["type"] === "string" || part["anyOf"] !== undefined;
}

/** The schema with each part that it says more than once among its definitions, so that it is compiled once; it accepts the same. */
export function shareParts(schema: Schema): Schema {
  const counts = new Map<string, number>();
  changeParts(schema, (part) => {
    const text = JSON.stringify(part);
    counts.set(text, (counts.get(text) ?? 0) + 1);
    return part;
  });
  const shared = new Map<string, { readonly name: string; readonly part: Schema }>();
  const changed = changeParts(schema, (part, original) => {
    const text = JSON.stringify(original);
    const isRepeated = (counts.get(text) ?? 0) > 1 && text.length >= LEAST_SHARED;
    // Why: the tag of a choice has to be seen in its members.
    if (!isRepeated || original["$ref"] !== undefined || original["const"] !== undefined) return part;
    const { name } = shared.get(text) ?? { name: `shared-${shared.size + 1}` };
    shared.set(text, { name, part });
    return { $ref: `#/$defs/${name}` };
  });
  const definitions = Object.fromEntries([...shared.values()].map(({ name, part }) => [name, part]));
  return { ...changed, $defs: { ...asSchema(changed["$defs"]), ...definitions } };
}

/** Changes every part of a schema, the innermost first, but not the whole. */
function changeParts(schema: Schema, change: (part: Schema, original: Schema) => Schema): Schema {
  const inside = (value: unknown, key: string): unknown => {
    if (DATA.has(key)) return value;
    if (Array.isArray(value)) return value.map((one) => inside(one, ""));
    if (!isSchema(value)) return value;
    if (MAPS.has(key)) return mapValues(value, (one) => inside(one, ""));
    return change(mapValues(value, inside), value);
  };
  return mapValues(schema, inside);
}

function mapValues(map: Schema, change: (value: unknown, key: string) => unknown): Schema {
  return Object.fromEntries(Object.entries(map).map(([key, value]) => [key, change(value, key)]));
}

function isSchema(value: unknown): value is Schema {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function asSchema(value: unknown): Schema {
  return isSchema(value) ? value : {};
}
