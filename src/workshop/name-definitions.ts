type Json = Readonly<Record<string, unknown>>;

/** What one pass over a schema knows: the definitions as they came, their new names, and what has been written. */
interface Naming {
  readonly definitions: Json;
  readonly names: ReadonlyMap<string, string>;
  readonly written: Map<string, unknown>;
}

const REFERENCE = /^#\/\$defs\/(.+)$/;

/**
 * Puts the numbered definitions of a schema in order: one that has a title and is used more than once, or that refers
 * to itself, is kept under a name made of its title; every other one is written where it is used.
 * Why: a numbered definition means nothing to a reader, and a schema without any is ten times as long.
 */
export function nameDefinitions(schema: Json): Json {
  const { $defs, ...root } = schema;
  if (!isObject($defs)) return schema;
  const naming: Naming = { definitions: $defs, names: chooseNames(schema, $defs), written: new Map() };
  const written = rewrite(root, naming);
  if (!isObject(written)) throw new Error("a schema is an object");
  return { ...written, $defs: Object.fromEntries([...naming.written].sort(([a], [b]) => (a < b ? -1 : 1))) };
}

/** The new name of every definition that is kept, by its old name. */
function chooseNames(schema: Json, definitions: Json): ReadonlyMap<string, string> {
  const uses = listReferences(schema);
  const names = new Map<string, string>();
  for (const [old, definition] of Object.entries(definitions)) {
    const title = isObject(definition) ? definition["title"] : undefined;
    const isShared = typeof title === "string" && uses.filter((use) => use === old).length > 1;
    if (isShared || refersToItself(old, definitions)) names.set(old, freeName(String(title ?? "value"), names));
  }
  return names;
}

function freeName(title: string, taken: ReadonlyMap<string, string>): string {
  const name = title.toLowerCase().replaceAll(/[^a-z0-9]+/g, "-");
  const used = new Set(taken.values());
  for (let count = 1; ; count += 1) {
    const candidate = count === 1 ? name : `${name}-${count}`;
    if (!used.has(candidate)) return candidate;
  }
}

function refersToItself(name: string, definitions: Json): boolean {
  const seen = new Set<string>();
  const queue = [...listReferences(definitions[name])];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    if (next === name) return true;
    if (!seen.has(next)) queue.push(...listReferences(definitions[next]));
    seen.add(next);
  }
  return false;
}

/** The names of the definitions that a part of a schema refers to, once for each use. */
function listReferences(part: unknown): readonly string[] {
  if (Array.isArray(part)) return part.flatMap(listReferences);
  if (!isObject(part)) return [];
  return Object.entries(part).flatMap(([key, value]) => {
    const name = key === "$ref" ? referencedName(value) : undefined;
    return name === undefined ? listReferences(value) : [name];
  });
}

function rewrite(part: unknown, naming: Naming): unknown {
  if (Array.isArray(part)) return part.map((member) => rewrite(member, naming));
  if (!isObject(part)) return part;
  const { $ref, ...rest } = part;
  const own = Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, rewrite(value, naming)]));
  const old = referencedName($ref);
  if (old === undefined) return "$ref" in part ? { $ref: rewrite($ref, naming), ...own } : own;
  const name = naming.names.get(old);
  if (name === undefined) return { ...expectObject(rewrite(naming.definitions[old], naming)), ...own };
  if (!naming.written.has(name)) {
    // Why: the place is taken before the definition is walked, so one that refers to itself ends.
    naming.written.set(name, {});
    naming.written.set(name, rewrite(naming.definitions[old], naming));
  }
  return { $ref: `#/$defs/${name}`, ...own };
}

function referencedName(value: unknown): string | undefined {
  return typeof value === "string" ? REFERENCE.exec(value)?.[1] : undefined;
}

function expectObject(value: unknown): Json {
  if (!isObject(value)) throw new Error("a definition is an object");
  return value;
}

function isObject(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
