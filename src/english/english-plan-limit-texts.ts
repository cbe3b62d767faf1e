import type { DiagnosticTexts, PlanLimitShapes, QuantityFaultName } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

const QUANTITY_FAULTS: Readonly<Record<QuantityFaultName, string>> = {
  missing: "says nothing",
  unreadable: "is not a number, one space and a unit",
  "no-unit": "has no unit",
  "unknown-unit": "has a unit that is not known",
  "wrong-dimension": "measures something else",
  "too-fine": "is finer than its unit is kept",
};

/** Limits, tolerances and instruments. */
export const ENGLISH_PLAN_LIMIT_TEXTS = {
  "plan/bad-quantity": {
    message: ({ found, fault, dimension, mend }) =>
      `\`${found}\` ${found === mend ? "is a text" : QUANTITY_FAULTS[fault]}; a ${dimension} is wanted`,
    wanted: ({ dimension, units }) =>
      dimension === "count" ? "a whole number" : `a number, one space and ${wantOneOf(units) ?? "a unit"}`,
    mend: ({ found, mend }) =>
      mend === undefined ? undefined : `write \`${mend}\`${found === mend ? " without quotes" : ""}`,
  },
  "plan/wrong-dimension": {
    message: ({ found, dimension }) => `this measures ${found}; a ${dimension} is wanted`,
  },
  "plan/no-limit": {
    message: () => "there is no limit here",
    wanted: () => "at least one of `at-least`, `at-most`, `above`, `below`, `between`, or `nominal` with `plus-minus`",
  },
  "plan/no-accept": {
    message: () => "the tolerance does not say what is accepted",
    wanted: () => "`accept` with at least one limit",
  },
  "plan/no-basis": {
    message: () => "the limit does not say where it comes from",
    mend: () => "add `basis` to the step, such as `basis: { kind: common-practice }`",
  },
  "plan/empty-band": {
    message: () => "no value can satisfy these limits",
    mend: () => "look for bounds that are swapped",
  },
  "plan/cases-overlap": {
    message: () => "two cases can hold for the same record",
    mend: () => "let each case name other values of the same fact",
  },
  "plan/rows-not-rising": {
    message: ({ found }) => `the row up to \`${found ?? ""}\` does not lie above the row before it`,
    mend: () => "list the rows from the lowest `up-to` to the highest",
  },
  "plan/share-in-row": {
    message: () => "`up-to` takes a quantity, not a share of a fact",
  },
  "plan/empty-caution": {
    message: () => "no accepted value lies in the caution band",
    mend: () => "caution is the accepted part close to a limit; move its bound inside `accept`",
  },
  "plan/swapped-bounds": {
    message: ({ low, high }) => `the band runs from \`${low}\` down to \`${high}\``,
    mend: ({ low, high }) => `write \`[${high}, ${low}]\``,
  },
  "plan/half-stated": {
    message: ({ present, absent }) => `\`${present}\` stands without \`${absent}\``,
    mend: ({ absent }) => `add \`${absent}\``,
  },
  "plan/share-in-nominal": {
    message: () => "`nominal` and `plus-minus` take quantities, not a share of a fact",
    mend: () => "state the band as `between` with two shares",
  },
  "plan/mixed-units": {
    message: ({ nominal, plusMinus }) => `\`${nominal}\` and \`${plusMinus}\` do not add up exactly`,
    mend: () => "give both in the same unit",
  },
  "plan/instrument-quantity": {
    message: ({ instrument, shows, reads }) => `\`${instrument}\` shows ${shows}; the step reads ${reads}`,
  },
  "plan/instrument-without-quantity": {
    message: ({ instrument }) => `\`${instrument}\` does not say what it measures`,
    mend: () => "add `quantity`",
  },
  "plan/not-positive": {
    message: ({ key, text }) => `\`${key}\` cannot be \`${text}\``,
    wanted: ({ key }) => (key === "division" ? "a division above 0" : "a largest error of 0 or more"),
  },
} satisfies Pick<DiagnosticTexts, keyof PlanLimitShapes>;
