import { compilePolicy, type Policy } from "../../src/index.js";

/** A brigade's policy, from which the tests of adoptions extend. */
export const PARENT = `tenbar: 1
policy: { id: p, title: P, version: "1.0", status: common-practice }
deference: Local procedure stands above this policy.
tolerances:
  drop: { accept: { at-most: 10 bar }, basis: { kind: common-practice } }
checks:
  daily:
    order: any
    intervals: [tested]
    steps:
      - { step: harness, kind: confirm }
      - step: leak
        kind: hold
        quantity: pressure
        lasting: { at-least: 60 s }
        drop: drop
        basis: { kind: common-practice }
      - { step: torch, kind: confirm, consequence: refer }
      - { step: tally, kind: match, places: [set, log-book], consequence: refer }
intervals:
  tested: { of: set, every: P1Y, counted: from-last, date: testedOn, consequence: refer, basis: { kind: common-practice } }
`;

/** A parent that asks of the harness and of what `steps` says, a line of YAML each. */
export const parentWith = (...steps: readonly string[]) => `tenbar: 1
policy: { id: p, title: P, version: "1.0", status: common-practice }
deference: Local procedure stands above this policy.
checks:
  daily:
    order: any
    steps:
      - { step: harness, kind: confirm }
${steps.map((step) => `      - { ${step} }\n`).join("")}`;

/** The head of a policy that extends another. */
export const head = (id: string, parent: string) =>
  `tenbar: 1\npolicy: { id: ${id}, title: C, version: "1", status: draft }\nextends: ${parent}\n`;

/** An adoption from April 2026 on. */
export const adopt = (id: string, rest: string) =>
  `  - { id: ${id}, ${rest}, from: 2026-04-01, order: "LO 1", by: An officer, reason: A trial }\n`;

export function compile(text: string, parents: Readonly<Record<string, string>> = {}) {
  return compilePolicy(text, { file: "child.yaml", parents: { "./parent.yaml": PARENT, ...parents } });
}

/** A policy without a single diagnostic. */
export function compileSound(text: string, parents: Readonly<Record<string, string>> = {}): Policy {
  const { policy, diagnostics } = compile(text, parents);
  if (policy === undefined || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics, undefined, 1));
  return policy;
}

/** A child that lets 20 bar fall where the parent lets 10. */
export const looser = `${head("c", "./parent.yaml")}tolerances:
  drop: { accept: { at-most: 20 bar }, basis: { kind: local, order: "LO 1" } }
`;

/** Of the subject: the interval `tested` is in time until January 2027. */
export const tested = { testedOn: "2026-01-10" };

/** A policy whose step differs from its parent's under an order that ends on 30 April 2026. */
export function compileStep(parents: string, own: string): Policy {
  const parent = parentWith(`step: one, ${parents}`);
  const child = `${head("c", "./parent.yaml")}checks:
  daily:
    steps:
      - { step: one, ${own} }
adopted:
${adopt("trial", "step: daily/one, until: 2026-04-30")}`;
  const { policy, diagnostics } = compile(child, { "./parent.yaml": parent });
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics));
  return policy;
}
