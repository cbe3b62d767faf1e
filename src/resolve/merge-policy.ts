import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import type { ParsedPolicy } from "../read/index.js";
import { mergeChecks } from "./merge-checks.js";
import { createOrigins, type Origins } from "./origins.js";
import type { ResolvedPolicy } from "./resolved-policy.js";
import { warnNearNames } from "./warn-near-names.js";

/** Maps whose entries are replaced whole by one of the same name, never blended. */
const MAPS = ["facts", "instruments", "tolerances", "intervals"] as const;
/** Keys of which the child's value stands, else the parent's. */
const SINGLE = ["deference", "undecided", "for"] as const;

/** Puts a policy on top of its parent; every part of the outcome knows the text that states it. */
export function mergePolicy(parent: ResolvedPolicy, parsed: ParsedPolicy, diagnostics: Diagnostics): ResolvedPolicy {
  const child = parsed.document;
  const origins = createOrigins(parsed, parent);
  warnNearNames(parent.document, parsed, diagnostics);
  const merged: PolicyDocument = { tenbar: 1, policy: child.policy };
  for (const key of SINGLE) takeSingle(key, merged, child, parent.document, origins);
  for (const key of MAPS) {
    const map = mergeMap(key, child[key], parent.document[key], origins);
    if (Object.keys(map).length > 0) Object.assign(merged, { [key]: map });
  }
  merged.cautions = mergeCautions(child, parent, origins);
  if (merged.cautions.length === 0) delete merged.cautions;
  const { checks, removedSteps } = mergeChecks(parent, parsed, origins, diagnostics);
  if (Object.keys(checks).length > 0) merged.checks = checks;
  mergeListed("rules", "rule", merged, child, parent.document, origins);
  mergeListed("adopted", "id", merged, child, parent.document, origins);
  const own = parsed.place("/policy").source;
  return {
    document: merged,
    parent,
    removedSteps: [...parent.removedSteps, ...removedSteps],
    place: origins.place,
    isInherited: (pointer) => origins.place(pointer).source !== own,
  };
}

type SingleKey = (typeof SINGLE)[number];

function takeSingle(
  key: SingleKey,
  merged: PolicyDocument,
  child: PolicyDocument,
  parent: PolicyDocument,
  origins: Origins,
): void {
  const own = child[key];
  const value = own ?? parent[key];
  if (value === undefined) return;
  Object.assign(merged, { [key]: value });
  if (own === undefined) origins.fromParent(`/${key}`, `/${key}`);
}

function mergeMap(
  key: string,
  child: Readonly<Record<string, unknown>> | undefined,
  parent: Readonly<Record<string, unknown>> | undefined,
  origins: Origins,
): Record<string, unknown> {
  const merged = new Map(Object.entries(parent ?? {}));
  for (const name of merged.keys()) origins.fromParent(`/${key}/${name}`, `/${key}/${name}`);
  for (const [name, value] of Object.entries(child ?? {})) {
    merged.set(name, value);
    origins.fromChild(`/${key}/${name}`, `/${key}/${name}`);
  }
  return Object.fromEntries(merged);
}

/** Why: a caution of the parent warns of what the child inherits, so none is lost. */
function mergeCautions(child: PolicyDocument, parent: ResolvedPolicy, origins: Origins): string[] {
  const inherited = parent.document.cautions ?? [];
  const own = (child.cautions ?? []).filter((caution) => !inherited.includes(caution));
  inherited.forEach((_, index) => {
    origins.fromParent(`/cautions/${index}`, `/cautions/${index}`);
  });
  return [...inherited, ...own];
}

/** Rules and adoptions: one of the same name takes the parent's place, a new one goes last. */
function mergeListed(
  key: "rules" | "adopted",
  nameKey: "rule" | "id",
  merged: PolicyDocument,
  child: PolicyDocument,
  parent: PolicyDocument,
  origins: Origins,
): void {
  const nameOf = (value: object): unknown => Object.entries(value).find(([name]) => name === nameKey)?.[1];
  const own = (child[key] ?? []).map((value, index) => ({ value, index, isOwn: true }));
  const inherited = (parent[key] ?? []).flatMap((value, index) => {
    const kept = keepAsked(value, child.without ?? []);
    return kept === undefined ? [] : [{ value: kept, index, isOwn: false }];
  });
  const replaced = inherited.map((one) => own.find(({ value }) => nameOf(value) === nameOf(one.value)) ?? one);
  const list = [...replaced, ...own.filter((one) => !replaced.includes(one))];
  if (list.length === 0) return;
  list.forEach(({ index, isOwn }, position) => {
    if (isOwn) origins.fromChild(`/${key}/${position}`, `/${key}/${index}`);
    else origins.fromParent(`/${key}/${position}`, `/${key}/${index}`);
  });
  Object.assign(merged, { [key]: list.map(({ value }) => value) });
}

type Listed = NonNullable<PolicyDocument["rules" | "adopted"]>[number];

/** A part of the parent without the checks that the child takes away; undefined where it names no other. */
function keepAsked(part: Listed, removed: readonly string[]): Listed | undefined {
  if (!("checks" in part) || part.checks === undefined) return part;
  const checks = part.checks.filter((check) => !removed.includes(check));
  return checks.length === 0 ? undefined : { ...part, checks };
}
