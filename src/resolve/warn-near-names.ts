import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import type { ParsedPolicy } from "../read/index.js";
import { findNearest } from "../terms/index.js";
import type { PlainThing } from "../words/index.js";

/** A name may differ by one letter from another that it was meant to be, from `LONG_NAME` letters on by two. */
const LONG_NAME = 8;
/** Of shorter names too many are one letter from another. */
const SHORT_NAME = 4;

interface Named {
  readonly name: string;
  readonly pointer: string;
  /** Names that the author shows to know, so that none of them can have been meant. */
  readonly besides: readonly string[];
}

/**
 * Warns of a part that is new and all but called as one of the parent's: a name mistyped adds a part, and the parent's, which
 * was to be changed, stays as it is. A tolerance or an instrument that is mistyped is one that nothing uses.
 */
export function warnNearNames(parent: PolicyDocument, parsed: ParsedPolicy, diagnostics: Diagnostics): void {
  const child = parsed.document;
  const warn = (thing: PlainThing, own: readonly Named[], inherited: readonly string[]): void => {
    for (const { name, pointer, besides } of own) {
      const taken = [...own.map((one) => one.name), ...besides];
      const near = inherited.includes(name)
        ? undefined
        : findSlip(
            name,
            inherited.filter((one) => !taken.includes(one)),
          );
      if (near === undefined) continue;
      diagnostics.report("resolve/near-name", parsed.place(pointer, "key"), { thing, name, nearest: near });
    }
  };
  for (const [key, thing] of [
    ["checks", "check"],
    ["facts", "fact"],
    ["intervals", "interval"],
  ] as const) {
    const besides = key === "checks" ? (child.without ?? []) : [];
    const own = Object.keys(child[key] ?? {}).map((name) => ({ name, pointer: `/${key}/${name}`, besides }));
    warn(thing, own, Object.keys(parent[key] ?? {}));
  }
  const rules = (child.rules ?? []).map(({ rule }, index) => ({
    name: rule,
    pointer: `/rules/${index}/rule`,
    besides: [],
  }));
  warn(
    "rule",
    rules,
    (parent.rules ?? []).map(({ rule }) => rule),
  );
  for (const [check, { steps = [], without = [] }] of Object.entries(child.checks ?? {})) {
    const own = steps.map(({ step, before, behind, formerly = [] }, index) => ({
      name: step,
      pointer: `/checks/${check}/steps/${index}/step`,
      besides: [...without, ...formerly, ...[before, behind].filter((one) => one !== undefined)],
    }));
    warn("step", own, parent.checks?.[check]?.steps?.map(({ step }) => step) ?? []);
  }
}

/** The name that was probably meant; names that differ in their figures, `stage-1` and `stage-2`, are meant so. */
function findSlip(name: string, known: readonly string[]): string | undefined {
  if (name.length < SHORT_NAME) return undefined;
  const figures = (text: string) => text.replaceAll(/\D+/g, " ").trim();
  const alike = known.filter((one) => figures(one) === figures(name));
  return findNearest(name, alike, name.length < LONG_NAME ? 1 : 2);
}
