import policySchema from "./generated/policy-schema.json" with { type: "json" };
import { splitPointer } from "./json-pointer.js";
import { isPlainMap, type PlainMap } from "./plain-map.js";

/** The part of the schema that speaks of one entry, with references followed and alternatives chosen. */
export interface Shape {
  readonly schema: PlainMap;
  /** The entry's value. */
  readonly value: unknown;
  /** The members of the choice that this shape was chosen from by its tag. */
  readonly siblings: readonly PlainMap[];
}

const ROOT: PlainMap = policySchema;

/** Follows a pointer through the value and the policy schema at once; nothing where the schema says nothing. */
export function findShape(document: unknown, pointer: string): Shape | undefined {
  let shape: Shape | undefined = chooseShape(ROOT, document);
  for (const token of splitPointer(pointer)) {
    if (shape === undefined) return undefined;
    const child: PlainMap | undefined = childSchema(shape.schema, token);
    shape = child === undefined ? undefined : chooseShape(child, childValue(shape.value, token));
  }
  return shape;
}

/** Follows references; what stands beside a reference adds to what it names and never replaces it. */
export function resolveSchema(schema: PlainMap): PlainMap {
  const reference = schema["$ref"];
  if (typeof reference !== "string") return schema;
  const { $ref: _, ...beside } = schema;
  const target = splitPointer(reference).reduce<unknown>((part, token) => childValue(part, token), ROOT);
  if (!isPlainMap(target)) throw new Error(`the policy schema has no ${reference}`);
  return resolveSchema({ ...beside, ...target });
}

/** The members of a schema's choice (`oneOf`, `anyOf`), references followed. */
export function listChoices(schema: PlainMap, keyword: "oneOf" | "anyOf"): readonly PlainMap[] {
  const list = schema[keyword];
  return Array.isArray(list) ? list.filter(isPlainMap).map(resolveSchema) : [];
}

/** The value that a tagged choice's member asks of the tag. */
export function readTag(schema: PlainMap, tag: string): unknown {
  const member = childSchema(schema, tag);
  return member === undefined ? undefined : resolveSchema(member)["const"];
}

/** The key that tells the members of a choice apart. */
export function readDiscriminator(schema: PlainMap): string | undefined {
  const discriminator = schema["discriminator"];
  const tag = isPlainMap(discriminator) ? discriminator["propertyName"] : undefined;
  return typeof tag === "string" ? tag : undefined;
}

/** Tells whether a value is of a schema's `type`. */
export function fitsType(schema: PlainMap, value: unknown): boolean {
  switch (schema["type"]) {
    case "object":
      return isPlainMap(value);
    case "array":
      return Array.isArray(value);
    case "integer":
      return Number.isInteger(value);
    case "null":
      return value === null;
    default:
      return schema["type"] === undefined || schema["type"] === typeof value;
  }
}

function chooseShape(unresolved: PlainMap, value: unknown): Shape {
  const schema = resolveSchema(unresolved);
  const tag = readDiscriminator(schema);
  if (tag !== undefined) {
    const choices = listChoices(schema, "oneOf");
    const wanted = isPlainMap(value) && Object.hasOwn(value, tag) ? value[tag] : undefined;
    const chosen = choices.find((choice) => wanted !== undefined && readTag(choice, tag) === wanted);
    return { schema: chosen ?? schema, value, siblings: chosen === undefined ? [] : choices };
  }
  const fitting = listChoices(schema, "anyOf").find((choice) => fitsType(choice, value));
  if (fitting === undefined) return { schema, value, siblings: [] };
  const { anyOf: _, ...beside } = schema;
  return chooseShape({ ...beside, ...fitting }, value);
}

function childSchema(schema: PlainMap, token: string): PlainMap | undefined {
  const { properties, additionalProperties, items } = schema;
  const named = isPlainMap(properties) && Object.hasOwn(properties, token) ? properties[token] : undefined;
  for (const child of [named, additionalProperties, items]) if (isPlainMap(child)) return child;
  return undefined;
}

function childValue(value: unknown, token: string): unknown {
  if (Array.isArray(value)) return value[Number(token)];
  return isPlainMap(value) && Object.hasOwn(value, token) ? value[token] : undefined;
}
