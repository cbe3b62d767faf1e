import { describe, expect, it } from "vitest";
import { DIAGNOSTICS, type DiagnosticCode } from "../../src/diagnostics/index.js";
import { findConstants } from "../../src/rules/index.js";
import { findNearest } from "../../src/terms/index.js";
import { compileSample, compileValid, TYPES as TYPES_OF_FACTS } from "./rule-samples.js";

type FaultRow = readonly [term: unknown, code: DiagnosticCode, pointer: string, nearest?: string];

const flag = { var: "trained" };
const pressure = { var: "leak.end" };
const cylinders = { var: "subject.cylinders" };
const nest = (depth: number): unknown =>
  Array.from({ length: depth }).reduce<unknown>((inner) => ({ "!": inner }), flag);

const OPERATORS: readonly FaultRow[] = [
  [{ "===": [flag, true] }, "rule/unknown-operator", "/===", "=="],
  [{ "!==": [flag, true] }, "rule/unknown-operator", "/!==", "!="],
  [{ "!!": [flag] }, "rule/unknown-operator", "/!!"],
  [{ "?:": [flag, true, false] }, "rule/unknown-operator", "/?:", "if"],
  ...["%", "*", "cat", "substr", "map", "filter", "reduce", "merge", "missing", "missing_some", "log"].map(
    (operator): FaultRow => [{ [operator]: [flag] }, "rule/unknown-operator", `/${operator}`],
  ),
  [{ "/": [flag, 2] }, "rule/unknown-operator", "/~1"],
  [{ "a~b": [flag] }, "rule/unknown-operator", "/a~0b"],
  [{ And: [flag, flag] }, "rule/unknown-operator", "/And", "and"],
  [{ nonee: [cylinders, true] }, "rule/unknown-operator", "/nonee", "none"],
  [{ coutn: [cylinders, true] }, "rule/unknown-operator", "/coutn", "count"],
  [{ "=<": [pressure, "10 bar"] }, "rule/unknown-operator", "/=<", "<="],
  [{ "&&": [flag, flag] }, "rule/unknown-operator", "/&&", "and"],
  [{ "<<": [pressure, "10 bar"] }, "rule/unknown-operator", "/<<"],
  [{ not: [flag] }, "rule/unknown-operator", "/not", "!"],
  [{ xor: [flag, flag] }, "rule/unknown-operator", "/xor", "!="],
  [{ "=>": [pressure, "10 bar"] }, "rule/unknown-operator", "/=>", ">="],
  [{ "=": [pressure, "10 bar"] }, "rule/unknown-operator", "/=", "=="],
  [{ "<>": [pressure, "10 bar"] }, "rule/unknown-operator", "/<>", "!="],
  [{ "||": [flag, flag] }, "rule/unknown-operator", "/||", "or"],
  [{ vra: "trained" }, "rule/unknown-operator", "/vra", "var"],
  [{ constructor: [flag] }, "rule/unknown-operator", "/constructor"],
  [{ toString: [flag] }, "rule/unknown-operator", "/toString"],
  [{ hasOwnProperty: [flag] }, "rule/unknown-operator", "/hasOwnProperty"],
  [JSON.parse('{"__proto__": [true]}'), "rule/unknown-operator", "/__proto__"],
  [{}, "rule/one-operator", ""],
  [{ and: [flag], or: [flag] }, "rule/one-operator", ""],
  [{ and: [flag, { "!": flag, note: "x" }] }, "rule/one-operator", "/and/1"],
];

const COUNTS: readonly FaultRow[] = [
  [{ and: [] }, "rule/operand-count", "/and"],
  [{ "!": [flag, flag] }, "rule/operand-count", "/!"],
  [{ if: [flag, true] }, "rule/operand-count", "/if"],
  [{ if: [flag, true, flag, false] }, "rule/operand-count", "/if"],
  [{ "==": [flag] }, "rule/operand-count", "/=="],
  [{ "==": flag }, "rule/operand-count", "/=="],
  [{ "<": [pressure, pressure, pressure, pressure] }, "rule/operand-count", "/<"],
  [{ ">": [pressure, pressure, pressure] }, "rule/operand-count", "/>"],
  [{ ">=": [pressure, pressure, pressure] }, "rule/operand-count", "/>="],
  [{ "<": [{ "-": [pressure, pressure, pressure] }, pressure] }, "rule/operand-count", "/</0/-"],
  [{ "<": [{ "+": [pressure] }, pressure] }, "rule/operand-count", "/</0/+"],
  [{ "<": [{ abs: [] }, pressure] }, "rule/operand-count", "/</0/abs"],
  [{ "<": [{ min: [] }, pressure] }, "rule/operand-count", "/</0/min"],
  [{ all: [cylinders] }, "rule/operand-count", "/all"],
  [{ in: [{ var: "role" }] }, "rule/operand-count", "/in"],
];

const NAMES: readonly FaultRow[] = [
  [{ var: "traned" }, "rule/unknown-name", "/var", "trained"],
  [{ "==": [{ var: "leak.ends" }, "10 bar"] }, "rule/unknown-name", "/==/0/var", "leak.end"],
  [{ var: "constructor" }, "rule/unknown-name", "/var"],
  [{ var: "__proto__" }, "rule/unknown-name", "/var"],
  [{ var: "" }, "rule/no-name", "/var"],
  [{ var: ["trained"] }, "rule/no-name", "/var"],
  [{ var: ["trained", false] }, "rule/no-name", "/var"],
  [{ var: { if: [flag, "trained", "stored"] } }, "rule/no-name", "/var"],
  [{ var: 0 }, "rule/no-name", "/var"],
  [{ var: null }, "rule/no-name", "/var"],
  [{ all: [cylinders, { var: "trained" }] }, "rule/unknown-name", "/all/1/var"],
  [{ all: [cylinders, { var: "linde" }] }, "rule/unknown-name", "/all/1/var", "lined"],
  [{ all: [cylinders, { var: "toString" }] }, "rule/unknown-name", "/all/1/var"],
  [{ all: [cylinders, { var: "" }] }, "rule/no-name", "/all/1/var"],
  [{ var: "lined" }, "rule/unknown-name", "/var"],
  [{ "==": [{ var: "role" }, "traning"] }, "rule/unknown-word", "/==/1", "training"],
  [{ "!=": ["Red", { var: "shift" }] }, "rule/unknown-word", "/!=/0", "red"],
  [{ in: [{ var: "role" }, ["training", "reserve"]] }, "rule/unknown-word", "/in/1/1"],
  [{ "==": [{ if: [flag, "spare", "traning"] }, { var: "role" }] }, "rule/unknown-word", "/==/0/if/2", "training"],
];

const TYPES: readonly FaultRow[] = [
  [null, "rule/no-term", ""],
  [[flag], "rule/no-term", ""],
  [{ and: [[flag]] }, "rule/no-term", "/and/0"],
  ["trained", "rule/wrong-type", ""],
  [1, "rule/wrong-type", ""],
  [pressure, "rule/wrong-type", ""],
  [cylinders, "rule/wrong-type", ""],
  [{ and: [flag, 1] }, "rule/wrong-type", "/and/1"],
  [{ or: ["yes", flag] }, "rule/wrong-type", "/or/0"],
  [{ "!": "" }, "rule/wrong-type", "/!"],
  [{ "!": [{ var: "role" }] }, "rule/wrong-type", "/!/0"],
  [{ if: [{ var: "crew" }, true, false] }, "rule/wrong-type", "/if/0"],
  [{ if: [flag, "red", true] }, "rule/wrong-type", "/if/1"],
  [{ all: [cylinders, { var: "id" }] }, "rule/wrong-type", "/all/1"],
  [{ all: [flag, true] }, "rule/wrong-type", "/all/0"],
  [{ all: ["subject.cylinders", true] }, "rule/wrong-type", "/all/0"],
  [{ all: [["a"], true] }, "rule/no-term", "/all/0"],
  [{ "==": [cylinders, cylinders] }, "rule/wrong-type", "/==/0"],
  [{ "==": [{ var: "role" }, 1] }, "rule/wrong-type", "/==/1"],
  [{ "==": [flag, "true"] }, "rule/wrong-type", "/==/1"],
  [{ "==": [{ var: "commissioned" }, { var: "role" }] }, "rule/wrong-type", "/==/1"],
  [{ "<": [{ var: "role" }, "training"] }, "rule/wrong-type", "/</0"],
  [{ "<": [flag, true] }, "rule/wrong-type", "/</0"],
  [{ "<": ["9 bar", "10 bar"] }, "rule/wrong-type", "/</0"],
  [{ "<": [pressure, { var: "hold.lasting" }] }, "rule/wrong-type", "/</1"],
  [{ "<": [{ "+": [pressure, { var: "hold.lasting" }] }, "10 bar"] }, "rule/wrong-type", "/</0/+/1"],
  [{ "<": [{ "+": [{ var: "indoors" }, { var: "outdoors" }] }, "300 K"] }, "rule/wrong-type", "/</0/+/0"],
  [{ "<": [{ abs: { var: "indoors" } }, "300 K"] }, "rule/wrong-type", "/</0/abs"],
  [{ "<": [{ "-": { var: "indoors" } }, "300 K"] }, "rule/wrong-type", "/</0/-"],
  [{ "<": [{ min: [{ var: "commissioned" }] }, "2026-01-01"] }, "rule/wrong-type", "/</0/min/0"],
  [{ in: [{ var: "keeper" }, "Ash"] }, "rule/wrong-type", "/in/1"],
  [{ in: [{ var: "keeper" }, []] }, "rule/wrong-type", "/in/1"],
  [{ in: [{ var: "keeper" }, cylinders] }, "rule/wrong-type", "/in/1"],
  [{ in: [{ var: "keeper" }, ["Ash", { var: "role" }]] }, "rule/wrong-type", "/in/1/1"],
  [{ in: [{ var: "keeper" }, ["Ash", 3]] }, "rule/wrong-type", "/in/1/1"],
  [{ in: [flag, [true]] }, "rule/wrong-type", "/in/0"],
];

const LITERALS: readonly FaultRow[] = [
  [{ "<=": [pressure, 10] }, "plan/bad-quantity", "/<=/1"],
  [{ "<=": [pressure, "10"] }, "plan/bad-quantity", "/<=/1"],
  [{ "<=": [pressure, "10 s"] }, "plan/bad-quantity", "/<=/1"],
  [{ "<=": ["10bar", pressure] }, "plan/bad-quantity", "/<=/0"],
  [{ "<=": [pressure, true] }, "plan/bad-quantity", "/<=/1"],
  [{ "<=": [true, pressure] }, "plan/bad-quantity", "/<=/0"],
  [{ "==": [{ var: "crew" }, 2.5] }, "plan/bad-quantity", "/==/1"],
  [{ "==": [{ var: "crew" }, "2"] }, "plan/bad-quantity", "/==/1"],
  [{ "==": [{ count: [cylinders, { var: "lined" }] }, "1 bar"] }, "plan/bad-quantity", "/==/1"],
  [{ "<": [{ "-": [{ var: "indoors" }, { var: "outdoors" }] }, "5 Cel"] }, "plan/bad-quantity", "/</1"],
  [{ in: [{ var: "rated" }, ["200 bar", "300"]] }, "plan/bad-quantity", "/in/1/1"],
  [{ "<": [{ var: "commissioned" }, "2026-02-30"] }, "plan/bad-date", "/</1"],
  [{ "<": [{ var: "commissioned" }, "1 March 2026"] }, "plan/bad-date", "/</1"],
];

const GUARDS: readonly FaultRow[] = [
  [nest(64), "rule/too-large", ""],
  [{ and: Array.from({ length: 10_000 }, () => true) }, "rule/too-large", ""],
];

/** Rules that compile and have a part that reads nothing. */
const CONSTANTS: readonly FaultRow[] = [
  [true, "rule/reads-nothing", ""],
  [{ and: [true, { "!": false }] }, "rule/reads-nothing", ""],
  [{ "==": ["role", "training"] }, "rule/reads-nothing", "/==", "role"],
  [{ "==": ["training", "role"] }, "rule/reads-nothing", "/==", "role"],
  [{ "==": ["rol", "spare"] }, "rule/reads-nothing", "/==", "role"],
  [{ "==": ["Ash", "Rowan"] }, "rule/reads-nothing", "/=="],
  [{ or: [flag, { in: ["shift", ["red"]] }] }, "rule/reads-nothing", "/or/1/in", "shift"],
  [{ some: [cylinders, { "==": ["id", "LM 1"] }] }, "rule/reads-nothing", "/some/1/==", "id"],
];

const ROWS = [...OPERATORS, ...COUNTS, ...NAMES, ...TYPES, ...LITERALS, ...GUARDS];

describe("a mistake in a rule", () => {
  it.each(ROWS.map((row) => [JSON.stringify(row[0])?.slice(0, 80), ...row] as const))(
    "%s",
    (_title, term, code, pointer, nearest) => {
      const { expression, faults } = compileSample(term);
      expect(expression).toBeUndefined();
      expect(faults.map((fault) => [fault.code, fault.pointer, fault.params["nearest"]])).toEqual([
        [code, pointer, nearest],
      ]);
    },
  );

  it("has a row for every code of rules", () => {
    const known = Object.keys(DIAGNOSTICS).filter((code) => code.startsWith("rule/"));
    const rows = [...ROWS, ...CONSTANTS];
    expect(new Set(rows.map(([, code]) => code).filter((code) => code.startsWith("rule/")))).toEqual(new Set(known));
  });

  it.each(CONSTANTS.map((row) => [JSON.stringify(row[0]), ...row] as const))(
    "%s reads nothing",
    (_title, term, _code, pointer, nearest) => {
      compileValid(term);
      const found = findConstants(term, { types: TYPES_OF_FACTS, nearest: findNearest });
      expect(found.map((one) => [one.pointer, one.name])).toEqual([[pointer, nearest]]);
    },
  );

  it("is none where a name is read", () => {
    const sound = [
      flag,
      { all: [cylinders, { var: "lined" }] },
      { all: [cylinders, true] },
      { "==": [pressure, "10 bar"] },
    ];
    for (const term of sound) {
      expect(findConstants(term, { types: TYPES_OF_FACTS, nearest: findNearest })).toEqual([]);
    }
  });

  it("does not hide the others", () => {
    const { faults } = compileSample({
      and: [
        { "==": [{ var: "rol" }, { "===": [1, 2] }] },
        { "<": [pressure, "10", { var: "leak.strat" }] },
        { if: [{ var: "crew" }, { var: "" }, { xor: [] }] },
        { in: [{ var: "kepeer" }, "Ash"] },
        { some: [cylinders, { and: [{ var: "linde" }, { "!": 1 }] }] },
        7,
      ],
    });
    expect(faults.map(({ code, pointer }) => `${pointer} ${code}`)).toEqual([
      "/and/0/==/0/var rule/unknown-name",
      "/and/0/==/1/=== rule/unknown-operator",
      "/and/1/</1 plan/bad-quantity",
      "/and/1/</2/var rule/unknown-name",
      "/and/2/if/0 rule/wrong-type",
      "/and/2/if/1/var rule/no-name",
      "/and/2/if/2/xor rule/unknown-operator",
      "/and/3/in/0/var rule/unknown-name",
      "/and/3/in/1 rule/wrong-type",
      "/and/4/some/1/and/0/var rule/unknown-name",
      "/and/4/some/1/and/1/! rule/wrong-type",
      "/and/5 rule/wrong-type",
    ]);
  });

  it("is refused just beyond the limits and not before", () => {
    expect(compileSample(nest(63)).faults).toEqual([]);
    expect(compileSample(nest(50_000)).faults.map(({ code }) => code)).toEqual(["rule/too-large"]);
    expect(compileSample({ and: Array.from({ length: 9_998 }, () => true) }).faults).toEqual([]);
  });

  it("says how a quantity without its space is mended", () => {
    const [fault] = compileSample({ "<=": [pressure, "10bar"] }).faults;
    expect(fault?.params).toMatchObject({ fault: "unreadable", dimension: "pressure", mend: "10 bar" });
  });

  it("may be a value that JSON does not know", () => {
    for (const term of [undefined, 10n, Symbol("x"), () => true, { var: 10n }, { and: [undefined, flag] }]) {
      const { expression, faults } = compileSample(term);
      expect([expression, faults.length]).toEqual([undefined, 1]);
    }
    const circle: { and: unknown[] } = { and: [] };
    circle.and.push(circle);
    expect(compileSample(circle).faults.map(({ code }) => code)).toEqual(["rule/too-large"]);
  });
});
