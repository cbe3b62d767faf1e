import { defineCode } from "./define-code.js";
import { wantOneOf } from "./word-list.js";

const QUANTITY_FAULTS: Readonly<Record<string, string>> = {
  missing: "says nothing",
  unreadable: "is not a number, one space and a unit",
  "no-unit": "has no unit",
  "unknown-unit": "has a unit that is not known",
  "wrong-dimension": "measures something else",
  "too-fine": "is finer than its unit is kept",
};

/** Codes of limits, tolerances and instruments. */
export const PLAN_LIMIT_CODES = {
  "plan/bad-quantity": defineCode<{
    found: string;
    fault: string;
    dimension: string;
    units: readonly string[];
    mend: string | undefined;
  }>({
    severity: "error",
    message: ({ found, fault, dimension }) =>
      `\`${found}\` ${QUANTITY_FAULTS[fault] ?? fault}; a ${dimension} is wanted`,
    wanted: ({ dimension, units }) =>
      dimension === "count" ? "a whole number" : `a number, one space and ${wantOneOf(units) ?? "a unit"}`,
    mend: ({ mend }) => (mend === undefined ? undefined : `write \`${mend}\``),
  }),
  "plan/wrong-dimension": defineCode<{ dimension: string }>({
    severity: "error",
    message: ({ found, dimension }) => `this measures ${found ?? "something else"}; a ${dimension} is wanted`,
  }),
  "plan/no-limit": defineCode({
    severity: "error",
    message: () => "there is no limit here",
    wanted: () => "at least one of `at-least`, `at-most`, `above`, `below`, `between`, or `nominal` with `plus-minus`",
  }),
  "plan/no-accept": defineCode({
    severity: "error",
    message: () => "the tolerance does not say what is accepted",
    wanted: () => "`accept` with at least one limit",
  }),
  "plan/no-basis": defineCode({
    severity: "error",
    message: () => "the limit does not say where it comes from",
    mend: () => "add `basis` to the step, such as `basis: { kind: common-practice }`",
  }),
  "plan/empty-band": defineCode({
    severity: "error",
    message: () => "no value can satisfy these limits",
    mend: () => "look for bounds that are swapped",
  }),
  "plan/cases-overlap": defineCode({
    severity: "error",
    message: () => "two cases can hold for the same record",
    mend: () => "let each case name other values of the same fact",
  }),
  "plan/rows-not-rising": defineCode({
    severity: "error",
    message: ({ found }) => `the row up to \`${found ?? ""}\` does not lie above the row before it`,
    mend: () => "list the rows from the lowest `up-to` to the highest",
  }),
  "plan/share-in-row": defineCode({
    severity: "error",
    message: () => "`up-to` takes a quantity, not a share of a fact",
  }),
  "plan/empty-caution": defineCode({
    severity: "warning",
    message: () => "no accepted value lies in the caution band",
    mend: () => "caution is the accepted part close to a limit; move its bound inside `accept`",
  }),
  "plan/swapped-bounds": defineCode<{ low: string; high: string }>({
    severity: "error",
    message: ({ low, high }) => `the band runs from \`${low}\` down to \`${high}\``,
    mend: ({ low, high }) => `write \`[${high}, ${low}]\``,
  }),
  "plan/half-stated": defineCode<{ present: string; absent: string }>({
    severity: "error",
    message: ({ present, absent }) => `\`${present}\` stands without \`${absent}\``,
    mend: ({ absent }) => `add \`${absent}\``,
  }),
  "plan/share-in-nominal": defineCode({
    severity: "error",
    message: () => "`nominal` and `plus-minus` take quantities, not a share of a fact",
    mend: () => "state the band as `between` with two shares",
  }),
  "plan/mixed-units": defineCode<{ nominal: string; plusMinus: string }>({
    severity: "error",
    message: ({ nominal, plusMinus }) => `\`${nominal}\` and \`${plusMinus}\` do not add up exactly`,
    mend: () => "give both in the same unit",
  }),
  "plan/instrument-quantity": defineCode<{ instrument: string; shows: string; reads: string }>({
    severity: "error",
    message: ({ instrument, shows, reads }) => `\`${instrument}\` shows ${shows}; the step reads ${reads}`,
  }),
  "plan/instrument-without-quantity": defineCode<{ instrument: string }>({
    severity: "error",
    message: ({ instrument }) => `\`${instrument}\` does not say what it measures`,
    mend: () => "add `quantity`",
  }),
  "plan/not-positive": defineCode<{ key: string; text: string }>({
    severity: "error",
    message: ({ key, text }) => `\`${key}\` cannot be \`${text}\``,
    wanted: ({ key }) => (key === "division" ? "a division above 0" : "a largest error of 0 or more"),
  }),
};
