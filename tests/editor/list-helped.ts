import { type Fields, isFields, readFields } from "./fields.js";

/** A key or a definition of a schema with the help that an editor shows for it. */
export interface Helped {
  /** Where it stands in the schema. */
  readonly path: string;
  readonly key: string;
  readonly help: string;
  /** The values of its closed list; empty where it has none. */
  readonly words: readonly string[];
}

/** Parts of a schema that hold values, not schemas. */
const VALUES: ReadonlySet<string> = new Set(["examples", "const", "enum", "required"]);

/**
 * Every property of a schema, and every named definition, with its description, else that of what it refers to, else
 * its title. What stands under `if` is a condition and no property.
 */
export function listHelped(root: Fields): readonly Helped[] {
  const list: Helped[] = [];
  const walk = (part: unknown, path: string): void => {
    if (Array.isArray(part)) for (const [index, member] of part.entries()) walk(member, `${path}/${index}`);
    if (!isFields(part)) return;
    for (const [keyword, value] of Object.entries(part)) {
      if (VALUES.has(keyword) || keyword === "if") continue;
      if (keyword !== "properties" && keyword !== "$defs") {
        walk(value, `${path}/${keyword}`);
        continue;
      }
      for (const [key, member] of Object.entries(readFields(value))) {
        const at = `${path}/${keyword}/${key}`;
        list.push(describeMember(root, readFields(member), at, key));
        walk(member, at);
      }
    }
  };
  walk(root, "");
  return list;
}

function describeMember(root: Fields, member: Fields, path: string, key: string): Helped {
  const { title, description, enum: words, const: word } = resolve(root, member);
  const closed = Array.isArray(words) ? words : word === undefined ? [] : [word];
  return { path, key, help: String(description ?? title ?? ""), words: closed.map(String) };
}

/** What stands beside a reference goes before what it refers to. */
function resolve(root: Fields, member: Fields): Fields {
  const { $ref, ...beside } = member;
  if (typeof $ref !== "string") return member;
  return { ...resolve(root, readFields(readFields(root["$defs"])[$ref.replace("#/$defs/", "")])), ...beside };
}
