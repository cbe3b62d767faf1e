import { type Entry, firstOf, isMissing, type Reason, type Ruling, withhold } from "./hand-ruling.js";

/** One cylinder of the set, or the lack of any (`id` and `object` are then undefined). */
export interface Cylinder {
  readonly id: string | undefined;
  readonly object: Entry | undefined;
  readonly fault: Reason | undefined;
}

export function isObject(value: unknown): value is Entry {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

export function readCylinders(list: unknown): readonly Cylinder[] {
  if (!Array.isArray(list) || list.length === 0) {
    return [{ id: undefined, object: undefined, fault: isMissing(list) ? "fact-missing" : "unreadable" }];
  }
  const cylinders = list.map((one: unknown): Cylinder => {
    const object = isObject(one) ? one : undefined;
    const text = object?.id;
    const id = typeof text === "string" ? text.trim() : "";
    return id === "" ? { id: undefined, object, fault: "fact-missing" } : { id, object, fault: undefined };
  });
  if (cylinders.length === 1) return cylinders;
  return cylinders.map((one) => {
    const isRepeated = one.id !== undefined && cylinders.some((other) => other !== one && other.id === one.id);
    return isRepeated ? { ...one, fault: "conflicting" } : one;
  });
}

/** Whether an entry is about a cylinder: it names it, or it names none or one that is not in the list. */
function concerns({ of }: Entry, { id }: Cylinder, all: readonly Cylinder[], hasList: boolean): boolean {
  if (!hasList || typeof of !== "string") return true;
  const name = of.trim();
  return name === "" || name === id || !all.some((other) => other.id === name);
}

function doubtOf({ of }: Entry, { id }: Cylinder, all: readonly Cylinder[]): Reason | undefined {
  if (isMissing(of)) return all.length === 1 ? undefined : "missing";
  if (typeof of !== "string") return "unreadable";
  return of.trim() === id ? undefined : "conflicting";
}

/** Rules on each cylinder by the entries that concern it; `all` keeps the ruling of every entry, the worst one first to count. */
export function ruleOnCylinders<R extends Ruling>(
  entries: readonly Entry[],
  cylinders: readonly Cylinder[],
  hasList: boolean,
  rule: (entry: Entry | undefined, cylinder: Cylinder) => R,
): { readonly worst: R; readonly all: readonly R[] }[] {
  return cylinders.map((cylinder) => {
    const own =
      entries.length === 0 ? entries : entries.filter((entry) => concerns(entry, cylinder, cylinders, hasList));
    const all = own.map((entry) => {
      const ruling = rule(entry, cylinder);
      const doubt = hasList ? doubtOf(entry, cylinder, cylinders) : undefined;
      if (doubt !== undefined) withhold(ruling, doubt);
      return ruling;
    });
    const worst = all.length > 1 ? mergeRulings(all, own) : (all[0] ?? rule(undefined, cylinder));
    if (cylinder.fault !== undefined) withhold(worst, cylinder.fault);
    return { worst, all: all.length > 1 ? all : [worst] };
  });
}

const SEVERITY = { "not-applicable": 0, within: 1, caution: 2, undecided: 3, outside: 4 } as const;

/** The worst of several entries for one cylinder; entries that differ in more than time and note are in conflict. */
function mergeRulings<R extends Ruling>(rulings: readonly R[], entries: readonly Entry[]): R {
  const worst = rulings.reduce((one, other) => {
    const difference = SEVERITY[one.outcome] - SEVERITY[other.outcome];
    if (difference !== 0) return difference > 0 ? one : other;
    return one.reason === firstOf(one.reason, other.reason) ? one : other;
  });
  const texts = entries.map(({ at: _at, note: _note, ...rest }) =>
    JSON.stringify(Object.entries(rest).sort(([one], [other]) => (one < other ? -1 : 1))),
  );
  if (texts.some((text) => text !== texts[0])) withhold(worst, "conflicting");
  return worst;
}
