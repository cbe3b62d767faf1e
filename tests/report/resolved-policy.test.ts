import { describe, expect, it } from "vitest";
import { german } from "../../src/german.js";
import { renderResolved } from "../../src/report/index.js";
import { adopt, compile, head, parentWith } from "../evaluate/orders.js";

const PARENT = `tenbar: 1
policy: { id: p, title: P, version: "1.0", status: common-practice }
deference: Local procedure stands above this policy.
facts:
  role: { at: /subject/role, one-of: [front-line, spare] }
checks:
  daily:
    order: any
    intervals: [tested]
    steps:
      - { step: strap, kind: confirm, consequence: refer, defects: { torn: { consequence: withdraw } } }
      - { step: leak, kind: hold, quantity: pressure, drop: { accept: { at-most: 10 bar } }, basis: { kind: common-practice } }
      - { step: tally, kind: match, places: [set, log-book], equals: subject.marking, ignore: [case], consequence: refer }
      - { step: book, kind: in-date, within: P30D, consequence: refer, basis: { kind: common-practice } }
      - { step: label, kind: in-date, not-past: true, consequence: refer, basis: { kind: common-practice } }
intervals:
  tested: { of: set, every: P1Y, for: { role: spare }, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
rules:
  - { rule: away, title: Spares stay, checks: [daily], when: { "==": [{ var: role }, spare] }, require: { "!=": [{ var: station }, Lowmere 3] }, consequence: refer, basis: { kind: local, order: LO 14 } }
`;

const CHILD = `${head("c", "./parent.yaml")}checks:
  daily:
    without: [strap]
    steps:
      - { step: leak, kind: hold, quantity: pressure, drop: { accept: { at-most: 20 bar } }, basis: { kind: common-practice } }
      - { step: book, kind: in-date, within: P60D, consequence: refer, basis: { kind: common-practice } }
intervals:
  tested: { of: set, every: P2Y, for: { role: spare }, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
adopted:
${adopt("gauge", "step: daily/leak, until: 2026-04-30")}${adopt("monthly", "step: daily/book, until: 2026-04-30")}${adopt("straps", "step: daily/strap, until: 2026-04-30")}${adopt("yearly", "interval: tested, only: { role: spare }, until: 2026-04-30")}${adopt("tags", "step: daily/tally, instead: daily/label, until: 2026-04-30")}`;

function render(parts: Partial<Parameters<typeof renderResolved>[1]> = {}, words?: typeof german): string {
  const { policy } = compile(CHILD, { "./parent.yaml": PARENT });
  if (policy === undefined) throw new Error("it does not compile");
  return renderResolved(policy.plan, { color: false, width: 1000, ...parts }, words).replaceAll(/\s+/g, " ");
}

describe("a policy as it stands after extends", () => {
  const told = render();

  it.each([
    ["what a defect weighs", "condition: refer, defect torn: withdraw [./parent.yaml:11:"],
    [
      "the places of a match, and what is compared",
      "match: refer, the same in every place (set, log-book), equal to subject.marking, ignoring case [./parent.yaml:13:",
    ],
    ["how old a date may be", "date: refer, at most 60 days old; common practice, no source [child.yaml:9:"],
    ["that a date is not past", "date: refer, not past; common practice, no source [./parent.yaml:15:"],
    [
      "what an interval weighs, for whom, and what it rests on",
      "interval tested: every 2 years, refer, only for role spare; common practice, no source [child.yaml:11:",
    ],
    [
      "what a rule requires, and where",
      "rule away, Spares stay: refer, station is not `Lowmere 3`, where role is spare; local order: LO 14 [./parent.yaml:19:",
    ],
  ])("says %s", (_, text) => {
    expect(told).toContain(text);
  });

  it.each([
    [
      "a limit",
      "gauge: leak drop from 2026-04-01 until 2026-04-30 under LO 1; else as the parent has it: drop: withdraw, at most 10 bar; common practice, no source [./parent.yaml:12:",
    ],
    [
      "a date",
      "monthly: book date from 2026-04-01 until 2026-04-30 under LO 1; else as the parent has it: date: refer, at most 30 days old; common practice, no source [./parent.yaml:14:",
    ],
    ["a step that is left out", "straps: strap from 2026-04-01 until 2026-04-30 under LO 1: left out"],
    ["a step asked instead", "tags: tally from 2026-04-01 until 2026-04-30 under LO 1: label instead"],
    [
      "an interval",
      "yearly: interval tested from 2026-04-01 until 2026-04-30 under LO 1, only for role spare; else as the parent has it: interval tested: every year, refer, only for role spare; common practice, no source [./parent.yaml:17:",
    ],
  ])("says beside an adoption of %s what stands without it", (_, text) => {
    expect(told).toContain(`adopted ${text}`);
  });

  it("says when, of what and with what each step is asked, and for whom a check is", () => {
    const text = `tenbar: 1
policy: { id: q, title: Q, version: "1", status: draft }
deference: Local procedure stands above this policy.
undecided: as-outside
for: { station: [Lowmere 1, Lowmere 2] }
instruments:
  gauge: { quantity: pressure, division: 10 bar }
checks:
  daily:
    subject: set
    competence: [wearer, technician]
    order: { listed-by: at }
    intervals: [tested]
    steps:
      - { step: sight, kind: confirm, attestable: true, consequence: refer }
      - { step: torch, kind: confirm, when-fitted: torch, consequence: refer }
      - { step: charge, kind: reading, each: subject.cylinders, quantity: pressure, instrument: gauge, after: [sight, torch], tolerance: { accept: { at-least: 270 bar } }, basis: { kind: common-practice } }
  spare:
    for: { class: open-circuit }
    order: { listed-by: position }
    steps:
      - { step: sight, kind: confirm, consequence: refer }
intervals:
  tested: { of: set, every: P1Y, forbids: use, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
`;
    const { policy, diagnostics } = compile(text);
    if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
    const said = renderResolved(policy.plan, { color: false, width: 1000 }).split("\n");
    expect(said.slice(1, 9)).toEqual([
      "  only for station Lowmere 1 or Lowmere 2; what stays open weighs as if it were outside",
      "",
      "daily",
      "  on subjects of kind set; by wearer or technician; its steps bear instants in their order",
      "  sight (confirm), may be vouched for",
      expect.stringContaining("condition: refer"),
      "  torch (confirm), where torch is fitted",
      expect.stringContaining("condition: refer"),
    ]);
    expect(said).toContain(
      "  charge (reading), for every member of subject.cylinders, read with gauge, after sight and torch",
    );
    expect(said.join("\n")).toContain("interval tested: every year, refer, past it no use; common practice");
    expect(said).toContain("  only for class open-circuit; its steps are recorded in their order");
  });

  it("says beside an adoption how the parent asks its step, where it asks it otherwise", () => {
    const parents = { "./parent.yaml": parentWith("step: torch, kind: confirm, consequence: refer") };
    const child = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: torch, kind: confirm, when-fitted: torch, consequence: refer }
      - { step: harness, kind: confirm, consequence: advise }
adopted:
${adopt("torches", "step: daily/torch, until: 2026-04-30")}${adopt("straps", "step: daily/harness, until: 2026-04-30")}`;
    const { policy, diagnostics } = compile(child, parents);
    if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
    const said = renderResolved(policy.plan, { color: false, width: 1000 });
    expect(said).toContain("torch (confirm), where torch is fitted\n");
    expect(said).toMatch(/adopted torches: .*else as the parent has it: always; condition: refer/);
    expect(said).toMatch(/adopted straps: .*else as the parent has it: condition: withdraw/);
  });

  it("says so in German", () => {
    const said = render({ words: german }, german);
    expect(said).toContain("an jeder Stelle gleich (set, log-book), gleich subject.marking, unbeachtet: case");
    expect(said).toContain("station ist nicht `Lowmere 3`, sofern gilt: role ist spare");
    expect(said).toContain("sonst wie in der Vorlage: Abfall: sperren, höchstens 10 bar");
  });
});
