import { type Assessment, compilePolicy, evaluate, type Policy } from "../../src/index.js";

type Data = Readonly<Record<string, unknown>>;

/** A policy of one check `daily`, from the parts that a case is about. */
export function makePolicy(steps: readonly Data[], parts: Data = {}, check: Data = {}): Policy {
  const text = JSON.stringify({
    tenbar: 1,
    policy: { id: "test/one", title: "One", version: "1", status: "draft" },
    deference: "Local procedure stands above this policy.",
    ...parts,
    checks: { daily: { order: "any", ...check, steps } },
  });
  const { policy, diagnostics } = compilePolicy(text);
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics, undefined, 1));
  return policy;
}

/** Evaluates one record of set S-014 at 12 April 2026. */
export function assess(policy: Policy, steps: readonly Data[], subject: Data = {}, rest: Data = {}): Assessment {
  return evaluate(policy, {
    tenbar: 1,
    id: "r",
    check: "daily",
    at: "2026-04-12T07:04:00+01:00",
    subject: { kind: "set", id: "S-014", ...subject },
    steps,
    ...rest,
  });
}

/** Outcome, with its reason where there is one, of each result by `step requirement part`. */
export function summarise({ results }: Assessment): Readonly<Record<string, string>> {
  return Object.fromEntries(
    results.map(({ step, interval, rule, requirement, part, outcome, reason }) => [
      [step ?? interval ?? rule, requirement, part].filter((word) => word !== undefined).join(" "),
      reason === undefined ? outcome : `${outcome}: ${reason}`,
    ]),
  );
}
