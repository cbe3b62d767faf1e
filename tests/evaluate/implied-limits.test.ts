import { describe, expect, it } from "vitest";
import { describeCheck } from "../../src/index.js";
import { compileStep } from "./orders.js";

const COMMON = "basis: { kind: common-practice }";
const reading = (accept: string) => `kind: reading, quantity: pressure, tolerance: { accept: ${accept} }, ${COMMON}`;
const inDate = (limit: string) => `kind: in-date, ${limit}, consequence: refer, ${COMMON}`;

/** What the form of a day after the order's last asks: the policy's limit, the parent's, or both. */
function listAccepted(parents: string, own: string): readonly (string | undefined)[] {
  const policy = compileStep(parents, own);
  const form = describeCheck(policy, "daily", { kind: "set", id: "S-014" }, { at: "2026-05-12" });
  const step = form?.steps.find((one) => one.step === "one");
  return step?.asked.flatMap(({ limits }) => limits.map(({ accept }) => accept)) ?? [];
}

describe("a form on a day on which the parent's limit stands beside the policy's", () => {
  it.each([
    ["{ at-most: 10 bar }", "{ at-most: 20 bar }", "at most 10 bar"],
    ["{ at-least: 20 bar }", "{ at-least: 10 bar }", "at least 20 bar"],
    ["{ below: 10 bar }", "{ at-most: 10 bar }", "below 10 bar"],
    ["{ above: 10 bar }", "{ at-least: 10 bar }", "above 10 bar"],
    ["{ between: [10 bar, 20 bar] }", "{ between: [5 bar, 25 bar] }", "10 bar to 20 bar"],
    ["{ between: [10 bar, 20 bar] }", "{ at-most: 25 bar }", "10 bar to 20 bar"],
    ["{ between: [10 bar, 20 bar] }", "{ at-least: 5 bar }", "10 bar to 20 bar"],
    ["{ above: 10 bar }", "{ at-least: 5 bar }", "above 10 bar"],
  ])("leaves the policy's out where what stands in %s stands in %s", (parents, own, accepted) => {
    expect(listAccepted(reading(parents), reading(own))).toEqual([accepted]);
  });

  it.each([
    ["{ at-most: 20 bar }", "{ at-least: 10 bar }", "at least 10 bar and at most 20 bar"],
    ["{ between: [10 bar, 20 bar] }", "{ between: [15 bar, 25 bar] }", "15 bar to 25 bar and 10 bar to 20 bar"],
    ["{ at-most: 20 bar }", "{ between: [10 bar, 25 bar] }", "10 bar to 25 bar and at most 20 bar"],
  ])("asks for both where neither of %s and %s says the other", (parents, own, accepted) => {
    expect(listAccepted(reading(parents), reading(own))).toEqual([accepted]);
  });

  // ISO 8601-1, 5.5.2: a month has no fixed number of days, so spans are compared part by part.
  it.each([
    ["within: P30D", "within: P60D", "at most 30 days old"],
    ["within: P2W", "within: P15D", "at most 2 weeks old"],
    ["within: P1Y", "within: P13M", "at most 1 year old"],
    ["within: P11M", "within: P1Y", "at most 11 months old"],
    ["within: P1Y1M", "within: P14M", "at most 1 year and 1 month old"],
    ["within: P1W", "within: P1W1D", "at most 1 week old"],
  ])("leaves the policy's out where %s is no longer than %s", (parents, own, accepted) => {
    expect(listAccepted(inDate(parents), inDate(own))).toEqual([accepted]);
  });

  it.each([
    ["within: P1M", "within: P31D", "at most 31 days old and at most 1 month old"],
    ["within: P1M", "within: P29D", "at most 29 days old and at most 1 month old"],
    ["within: P30D", "not-past: true", "not past and at most 30 days old"],
  ])("asks for both where %s and %s cannot be told apart by their length", (parents, own, accepted) => {
    expect(listAccepted(inDate(parents), inDate(own))).toEqual([accepted]);
  });
});
