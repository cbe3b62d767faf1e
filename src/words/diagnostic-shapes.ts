import type { QuantityFaultName, QuantityName } from "./quantity-name.js";
import type { Says } from "./says.js";
import type { PlainThing, RuleThing, Thing } from "./thing.js";

type Nothing = Readonly<Record<never, never>>;

/** A text that is not, or not only, the part of YAML that policies are written in. */
export interface ReadTextShapes {
  readonly "read/too-large": Says<{ bytes: number; most: number }, "wanted" | "mend">;
  readonly "read/too-deep": Says<{ most: number }, "wanted" | "mend">;
  readonly "read/too-many-nodes": Says<{ most: number }, "wanted" | "mend">;
  readonly "read/control-character": Says<{ count: number }, "wanted" | "mend">;
  readonly "read/lone-surrogate": Says<{ count: number }, "wanted" | "mend">;
  readonly "read/empty": Says<Nothing, "wanted">;
  readonly "read/several-documents": Says<Nothing, "wanted" | "mend">;
  readonly "read/directive": Says<Nothing, "wanted" | "mend">;
  readonly "read/anchor": Says<Nothing, "wanted" | "mend">;
  readonly "read/alias": Says<Nothing, "wanted" | "mend">;
  readonly "read/merge-key": Says<Nothing, "wanted" | "mend">;
  readonly "read/tag": Says<Nothing, "wanted" | "mend">;
  readonly "read/unclosed-quote": Says<{ quote: string }, "wanted" | "mend">;
  readonly "read/stray-quote": Says<{ quote: string; text?: string | undefined }, "wanted" | "mend">;
  readonly "read/text-behind-quote": Says<Nothing, "wanted" | "mend">;
  readonly "read/unclosed-bracket": Says<{ bracket: string; closing: string }, "wanted" | "mend">;
  readonly "read/tab-indent": Says<Nothing, "wanted" | "mend">;
  readonly "read/bad-indentation": Says<Nothing, "wanted" | "mend">;
  readonly "read/no-space-behind-colon": Says<{ key: string }, "wanted" | "mend">;
  readonly "read/no-colon": Says<Nothing, "wanted" | "mend">;
  readonly "read/colon-in-text": Says<Nothing, "wanted" | "mend">;
  readonly "read/reserved-start": Says<{ character: string }, "mend">;
  readonly "read/bad-escape": Says<Nothing, "wanted" | "mend">;
  readonly "read/bad-yaml": Says<Nothing, "mend">;
  readonly "read/text-cut-by-comment": Says<{ whole: string }, "mend">;
}

/** A text that is YAML and does not have the shape of a policy. */
export interface ReadShapeShapes {
  readonly "read/duplicate-key": Says<{ key: string; entry?: string | undefined }, "wanted" | "mend">;
  readonly "read/key-not-text": Says<Nothing, "wanted" | "mend">;
  readonly "read/text-cut-by-comma": Says<{ key: string; whole: string }, "wanted" | "mend">;
  readonly "read/no-value": Says<
    { key: string; expected: string; cutByComment?: string | undefined },
    "wanted" | "mend"
  >;
  readonly "read/number-not-exact": Says<Nothing, "wanted" | "mend">;
  readonly "read/unknown-key": Says<
    { key: string; known: readonly string[]; belongsTo?: readonly string[] | undefined },
    "wanted" | "mend"
  >;
  readonly "read/bad-name": Says<{ key: string; expected: string }, "wanted" | "mend">;
  readonly "read/missing-key": Says<{ key: string; owner: string; expected: string }, "wanted" | "mend">;
  readonly "read/wrong-type": Says<{ expected: string; hint?: string | undefined }, "wanted" | "mend">;
  readonly "read/unquoted-text": Says<{ text: string; readAs: string }, "wanted" | "mend">;
  readonly "read/unknown-value": Says<
    { value: string; known: readonly string[]; quoted?: string | undefined },
    "wanted" | "mend"
  >;
  readonly "read/unknown-kind": Says<{ key: string; value: string; known: readonly string[] }, "wanted" | "mend">;
  readonly "read/bad-text": Says<{ text: string; expected: string; hint?: string | undefined }, "wanted" | "mend">;
  readonly "read/empty-text": Says<{ expected: string }, "wanted" | "mend">;
  readonly "read/too-long": Says<{ most: number }, "wanted" | "mend">;
  readonly "read/wrong-count": Says<
    { count: number; least?: number | undefined; most?: number | undefined },
    "wanted" | "mend"
  >;
  readonly "read/empty-map": Says<{ owner: string; known: readonly string[] }, "wanted" | "mend">;
  readonly "read/wrong-shape": Says<{ keyword: string }, "mend">;
  readonly "read/more-mistakes": Says<{ count: number }, "mend">;
}

/** A part of a policy, where it and its parent state it, and what each says in words where that is known. */
type DepartureParams = {
  what: string;
  here: string;
  parent: string;
  limit?: string | undefined;
  parentLimit?: string | undefined;
};

/** What a policy inherits. */
export interface ResolveShapes {
  readonly "resolve/bad-parent": Says<{ parent: string; why: string }, "wanted">;
  readonly "resolve/no-parent": Says<{ parent: string; why: string }, "mend">;
  readonly "resolve/circle": Says<{ policies: readonly string[] }, "mend">;
  readonly "resolve/unpinned-parent": Says<{ parent: string; major: string }, "mend">;
  readonly "resolve/other-major": Says<{ parent: string; version: string; major: string }, "mend">;
  readonly "resolve/needs-parent": Says<{ key: string }, "mend">;
  readonly "resolve/near-name": Says<{ thing: PlainThing; name: string }, "mend">;
  readonly "resolve/parent-alone": Says<Nothing>;
  readonly "resolve/looser": Says<DepartureParams, "mend">;
  /** `known`: the requirements with limits that the step has here. */
  readonly "resolve/adoption-does-not-fit": Says<
    { adoption: string; step: string; known: readonly string[] },
    "wanted" | "mend"
  >;
  readonly "resolve/asked-only-instead": Says<{ step: string; adoption: string }, "mend">;
  readonly "resolve/covers-nothing": Says<{ adoption: string }, "mend">;
  readonly "resolve/cannot-compare": Says<DepartureParams, "mend">;
}

/** What a policy means: names, dates, adoptions. */
export interface PlanShapes {
  readonly "plan/unknown-name": Says<{ thing: Thing; name: string; known: readonly string[] }, "wanted" | "mend">;
  readonly "plan/not-yet": Says<{ option: string; of?: "unnamed-interval" | undefined }, "mend">;
  readonly "plan/bad-date": Says<{ found: string }, "wanted">;
  readonly "plan/dates-swapped": Says<{ from: string; to: string; key: string }, "mend">;
  readonly "plan/review-passed": Says<{ review: string; asOf: string }, "mend">;
  readonly "plan/no-checks": Says<Nothing>;
  readonly "plan/no-deference": Says<Nothing, "mend">;
  readonly "plan/shadowed-name": Says<{ thing: Thing; name: string }, "mend">;
  readonly "plan/take-without-size": Says<{ take: string; kind: "text" | "flag" }, "mend">;
  readonly "plan/adoption-without-end": Says<{ adoption: string; given: readonly string[] }, "mend">;
  readonly "plan/adoptions-meet": Says<{ adoption: string; other: string; requirement: string }, "mend">;
  readonly "plan/words-alike": Says<{ fact: string; word: string; other: string }, "mend">;
  readonly "plan/covering-cannot-lapse": Says<{ adoption: string; key: string }, "mend">;
  readonly "plan/adoption-of-interval": Says<{ key: string }, "mend">;
  readonly "plan/which-requirement": Says<{ known: readonly string[] }, "wanted" | "mend">;
  readonly "plan/unused": Says<{ thing: Thing; name: string }, "mend">;
}

/** Limits, tolerances and instruments. */
export interface PlanLimitShapes {
  readonly "plan/bad-quantity": Says<
    {
      found: string;
      fault: QuantityFaultName;
      dimension: QuantityName;
      units: readonly string[];
      mend: string | undefined;
    },
    "wanted" | "mend"
  >;
  readonly "plan/wrong-dimension": Says<{ found: QuantityName; dimension: QuantityName }>;
  readonly "plan/no-limit": Says<Nothing, "wanted">;
  readonly "plan/no-accept": Says<Nothing, "wanted">;
  readonly "plan/no-basis": Says<Nothing, "mend">;
  readonly "plan/empty-band": Says<Nothing, "mend">;
  readonly "plan/cases-overlap": Says<Nothing, "mend">;
  readonly "plan/rows-not-rising": Says<Nothing, "mend">;
  readonly "plan/share-in-row": Says<Nothing>;
  readonly "plan/empty-caution": Says<Nothing, "mend">;
  readonly "plan/swapped-bounds": Says<{ low: string; high: string }, "mend">;
  readonly "plan/half-stated": Says<{ present: string; absent: string }, "mend">;
  readonly "plan/share-in-nominal": Says<Nothing, "mend">;
  readonly "plan/mixed-units": Says<{ nominal: string; plusMinus: string }, "mend">;
  readonly "plan/instrument-quantity": Says<{
    instrument: string;
    shows: QuantityName | "nothing";
    reads: QuantityName | "nothing";
  }>;
  readonly "plan/instrument-without-quantity": Says<{ instrument: string }, "mend">;
  readonly "plan/not-positive": Says<{ key: "division" | "max-error"; text: string }, "wanted">;
}

/** Checks and steps. */
export interface PlanStepShapes {
  readonly "plan/bad-span": Says<{ found: string }, "wanted">;
  readonly "plan/duplicate-step": Says<{ step: string }, "mend">;
  readonly "plan/no-steps": Says<{ check: string }>;
  readonly "plan/no-order": Says<{ check: string }, "wanted">;
  readonly "plan/step-before-itself": Says<
    {
      steps: readonly string[];
      /** Where a step is to stand in the parent's list; else the steps go round in `after`. */
      key?: "before" | "behind" | undefined;
    },
    "mend"
  >;
  readonly "plan/after-later-step": Says<{ step: string; after: string }, "mend">;
  readonly "plan/apart-without-each": Says<Nothing, "mend">;
  readonly "plan/needs-one-of": Says<{ keys: readonly string[]; given: readonly string[] }, "wanted" | "mend">;
  readonly "plan/nothing-to-compare": Says<Nothing, "mend">;
  readonly "plan/duplicate-name": Says<{ thing: Thing; name: string }, "mend">;
  readonly "plan/mild-defect": Says<{ defect: string; consequence: string }, "mend">;
}

/** Rules in JsonLogic notation. */
export interface RuleShapes {
  readonly "rule/too-large": Says<{ depth: number; terms: number }>;
  readonly "rule/no-term": Says<{ found: RuleThing }, "wanted">;
  readonly "rule/one-operator": Says<{ operators: readonly string[] }, "wanted">;
  readonly "rule/unknown-operator": Says<
    {
      operator: string;
      known: readonly string[];
      /** The notation that has the operator, where rules leave it out on purpose. */
      origin: string | undefined;
    },
    "wanted" | "mend"
  >;
  readonly "rule/operand-count": Says<
    { operator: string; count: number; least: number; most: number | undefined },
    "wanted"
  >;
  readonly "rule/no-name": Says<{ found: RuleThing }, "mend">;
  readonly "rule/unknown-name": Says<{ name: string; known: readonly string[] }, "wanted" | "mend">;
  readonly "rule/unknown-word": Says<{ word: string; known: readonly string[] }, "wanted" | "mend">;
  readonly "rule/wrong-type": Says<
    {
      found: RuleThing;
      wanted: RuleThing;
      /** The name that stands there as a plain text, without `var`. */
      name?: string | undefined;
    },
    "mend"
  >;
  readonly "rule/reads-nothing": Says<{ literal: string | undefined }, "mend">;
}

/** Every code with its params and its texts. */
export interface DiagnosticShapes
  extends ReadTextShapes,
    ReadShapeShapes,
    ResolveShapes,
    PlanShapes,
    PlanLimitShapes,
    PlanStepShapes,
    RuleShapes {}
