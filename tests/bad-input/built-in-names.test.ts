import { afterEach, describe, expect, it } from "vitest";
import { compilePolicy, describeCheck, evaluate, type Policy, recordSchema } from "../../src/index.js";
import { restorePlan } from "../../src/plan-entry.js";
import { listPaths, pointTo, readAt, replaceAt } from "./junk.js";
import { BUILT_IN, EMPTY_RECORD, FULL_RECORD, nameEverything } from "./named-policy.js";

/** Names that every object answers to, and one that must not be set by a key. */
const NAMES = [...Object.getOwnPropertyNames(Object.prototype), "prototype"];
/** A word that a policy may use as a name. */
const GOOD_NAME = /^[a-z][a-z0-9-]*$/;
const POISON =
  '{ "polluted": true, "result": "satisfactory", "reading": "5 bar", "kind": "set", "competence": "wearer" }';

function compile(document: unknown): Policy {
  const { policy, diagnostics } = compilePolicy(JSON.stringify(document));
  if (policy === undefined) throw new Error(JSON.stringify(diagnostics, undefined, 1));
  return policy;
}

/** A copy in which the map at a path has one more key of its own, put there by the parser as a file would. */
function addKey(value: unknown, path: readonly string[], key: string, json: string): unknown {
  const map = JSON.stringify(readAt(value, path));
  const longer: unknown = JSON.parse(`{ ${JSON.stringify(key)}: ${json}${map === "{}" ? "" : ","} ${map.slice(1)}`);
  return path.length === 0 ? longer : replaceAt(value, path, longer);
}

function listMaps(value: unknown): readonly (readonly string[])[] {
  const paths = [[], ...listPaths(value)];
  return paths.filter((path) => {
    const found = readAt(value, path);
    return typeof found === "object" && found !== null && !Array.isArray(found);
  });
}

/** Texts that nothing is judged by; any name is good there. */
const NO_EVIDENCE: ReadonlySet<string> = new Set(["/id", "/by/id", "/subject/id"]);
const POLICY = compile(nameEverything(BUILT_IN));

afterEach(() => {
  expect(Reflect.get({}, "polluted")).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
});

describe("a policy in which everything is called like a built-in", () => {
  it("meets where the record states all of it", () => {
    const { verdict, results } = evaluate(POLICY, FULL_RECORD);
    expect(results.filter(({ outcome }) => outcome !== "within")).toEqual([]);
    expect([verdict, results.length]).toEqual(["meets", 9]);
  });

  it("finds nothing in empty maps, so nothing is decided and nothing meets", () => {
    const { results, verdict } = evaluate(POLICY, EMPTY_RECORD);
    expect(verdict).toBe("refer");
    expect(results.map(({ outcome }) => outcome)).toEqual(Array.from({ length: 9 }, () => "undecided"));
    expect(results.find(({ step }) => step === BUILT_IN)?.reason).toBe("fitting-not-recorded");
    expect(results.find(({ requirement }) => requirement === "competence")?.reason).toBe("fact-missing");
  });

  it("judges as before once it was saved and restored", () => {
    const { policy, problem } = restorePlan(JSON.parse(JSON.stringify(POLICY.plan)));
    expect(problem).toBeUndefined();
    for (const record of [EMPTY_RECORD, FULL_RECORD]) {
      expect(policy?.assess(record)).toEqual(POLICY.assess(record));
    }
  });
});

describe.each(NAMES)("the name %s", (name) => {
  it("makes a policy where it is a good name, and is refused at its place where it is not", () => {
    const text = JSON.stringify(nameEverything("zz-name"), undefined, 1).replaceAll("zz-name", name);
    const { policy, diagnostics } = compilePolicy(text);
    expect(policy !== undefined).toBe(GOOD_NAME.test(name));
    if (policy === undefined) expect(diagnostics.map(({ code }) => code)).toContain("read/bad-name");
    for (const { line, column } of diagnostics) {
      expect((text.split("\n")[line - 1] ?? "").slice(column - 1)).not.toBe("");
    }
  });

  it("is no check, and no step that was recorded", () => {
    if (name === BUILT_IN) return;
    const { verdict, findings, results } = evaluate(POLICY, { ...FULL_RECORD, check: name });
    expect([verdict, results, findings.map(({ code }) => code)]).toEqual(["refer", [], ["record/unknown-check"]]);
    expect(describeCheck(POLICY, name, {})).toBeUndefined();
    expect(recordSchema(POLICY, name)).toBeUndefined();
  });

  it("in place of any text of a record that is evidence never meets", () => {
    if (name === BUILT_IN) return;
    const texts = listPaths(FULL_RECORD).filter((path) => typeof readAt(FULL_RECORD, path) === "string");
    const evidence = texts.filter((path) => !NO_EVIDENCE.has(pointTo(path)));
    expect(evidence.length).toBe(texts.length - NO_EVIDENCE.size);
    for (const path of evidence) {
      const { verdict } = evaluate(POLICY, replaceAt(FULL_RECORD, path, name));
      expect([pointTo(path), verdict]).not.toEqual([pointTo(path), "meets"]);
    }
  });

  it("as a key of any map of a record decides nothing that was open", () => {
    for (const path of listMaps(EMPTY_RECORD)) {
      const poisoned = addKey(EMPTY_RECORD, path, name, POISON);
      const { verdict, results } = evaluate(POLICY, poisoned, { digest: true });
      // Invariant: a map where a text is wanted is unreadable, whatever its name.
      const decided = results.filter(({ outcome }) => outcome !== "undecided");
      expect([pointTo(path), verdict, decided]).toEqual([pointTo(path), "refer", []]);
    }
  });

  it("as a key of any map of a policy is refused, or is a name like others", () => {
    const document = nameEverything("own-name");
    for (const path of listMaps(document)) {
      const text = JSON.stringify(addKey(document, path, name, POISON));
      const { policy, diagnostics } = compilePolicy(text);
      expect([pointTo(path), policy]).toEqual([pointTo(path), undefined]);
      expect(diagnostics.length).toBeGreaterThan(0);
    }
  });
});
