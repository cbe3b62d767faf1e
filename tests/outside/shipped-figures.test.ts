import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import * as z from "zod";

const FOLDER = "policies/common-practice";

const basisModel = z.looseObject({
  kind: z.string(),
  source: z.string().optional(),
  seen: z.string().optional(),
  note: z.string().default(""),
});
const policyModel = z.looseObject({
  deference: z.string(),
  cautions: z.array(z.string()),
  tolerances: z
    .record(
      z.string(),
      z.looseObject({
        basis: basisModel,
        accept: z.unknown().optional(),
        caution: z.unknown().optional(),
        cases: z.array(z.unknown()).optional(),
        "accept-by": z.unknown().optional(),
      }),
    )
    .default({}),
  intervals: z.record(z.string(), z.looseObject({ every: z.string(), basis: basisModel })).default({}),
  rules: z
    .array(
      z.looseObject({
        rule: z.string(),
        when: z.unknown().optional(),
        require: z.unknown().optional(),
        basis: basisModel,
      }),
    )
    .default([]),
  checks: z.record(
    z.string(),
    z.looseObject({ steps: z.array(z.looseObject({ step: z.string(), basis: basisModel.optional() })) }),
  ),
});

type ShippedPolicy = z.infer<typeof policyModel>;
type Basis = z.infer<typeof basisModel>;

/** How a figure is known: P read in the published text, Q quoted by another page, C common practice, no source. */
type Mark = "P" | "Q" | "C";
type Row = readonly [name: string, value: unknown, mark: Mark, source?: string];
type Figure = readonly [name: string, value: unknown, basis: Basis | undefined];

/** The keys of a step under which limits stand; a text there names a tolerance, but for the span of `within`. */
const STEP_LIMITS = ["start", "lasting", "apart", "tolerance", "drop", "rise", "change"] as const;

function readShipped(file: string): ShippedPolicy {
  return policyModel.parse(parse(readFileSync(`${FOLDER}/${file}`, "utf8")));
}

function markOf({ kind, seen }: Basis): Mark | "M" {
  if (kind === "common-practice") return "C";
  return seen === undefined ? "P" : seen === "quoted" ? "Q" : "M";
}

/** Every figure of a shipped policy with its mark and source: tolerances, intervals, rules, limits written in steps. */
function listFigures(file: string): readonly Row[] {
  const policy = readShipped(file);
  const figures = [...listNamed(policy), ...listRuleFigures(policy), ...listStepFigures(policy)];
  return figures.map(([name, value, basis]) => {
    if (basis === undefined) throw new Error(`${file} ${name} has no basis`);
    const mark = markOf(basis);
    if (mark === "M") throw new Error(`${file} ${name} is from memory`);
    if (mark !== "C" && basis.source === undefined) throw new Error(`${file} ${name} names no source`);
    return basis.source === undefined ? [name, value, mark] : [name, value, mark, basis.source];
  });
}

function listNamed({ tolerances, intervals }: ShippedPolicy): readonly Figure[] {
  return [
    ...Object.entries(tolerances).flatMap(([name, { accept, caution, cases, basis, "accept-by": rows }]): Figure[] => [
      ...listAccepted(name, accept ?? cases ?? rows, basis),
      ...(caution === undefined ? [] : [[`${name} caution`, caution, basisOfCaution(basis)] as const]),
    ]),
    ...Object.entries(intervals).map(([name, { every, basis }]): Figure => [name, every, basis]),
  ];
}

/** An upper limit that the note marks as custom is a figure of its own, since the published text states the lower one alone. */
function listAccepted(name: string, value: unknown, basis: Basis): readonly Figure[] {
  const isMarked = basis.note.includes("The upper limit is common practice, no source");
  const bounds = z.looseObject({ "at-most": z.string() }).safeParse(value);
  if (!isMarked || !bounds.success) return [[name, value, basis]];
  const { "at-most": upper, ...lower } = bounds.data;
  return [
    [name, lower, basis],
    [`${name} upper`, upper, { kind: "common-practice", note: "" }],
  ];
}

/** No published text states a caution band, and a tolerance has one basis: its note says that the band is custom. */
function basisOfCaution(basis: Basis): Basis {
  return basis.note.includes("The caution band is common practice, no source.")
    ? { kind: "common-practice", note: "" }
    : basis;
}

/** The quantities of each rule, in the order of its text. */
function listRuleFigures({ rules }: ShippedPolicy): readonly Figure[] {
  return rules.flatMap(({ rule, when, require, basis }): Figure[] => {
    const texts: readonly string[] = JSON.stringify([when, require]).match(/"-?\d[^"]*"/g) ?? [];
    return texts.length === 0 ? [] : [[`rule ${rule}`, texts.map((text) => text.slice(1, -1)), basis]];
  });
}

function listStepFigures({ checks }: ShippedPolicy): readonly Figure[] {
  return Object.entries(checks).flatMap(([check, { steps }]) =>
    steps.flatMap((step) => {
      const limits = STEP_LIMITS.filter((key) => typeof step[key] === "object").map(
        (key): Figure => [`${check}/${step.step} ${key}`, withoutConsequence(step[key]), step.basis],
      );
      const within: Figure = [`${check}/${step.step} within`, step["within"], step.basis];
      return step["within"] === undefined ? limits : [...limits, within];
    }),
  );
}

function withoutConsequence(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).filter(([key]) => key !== "consequence"));
}

const START: readonly [unknown, Mark] = [{ "at-least": "100 bar" }, "C"];
const MINUTE: readonly [unknown, Mark] = [{ "at-least": "60 s" }, "C"];
const APART: readonly [unknown, Mark] = [{ "at-most": "20 bar" }, "C"];
const BREATH: readonly [unknown, Mark] = [{ "at-least": "8 s" }, "C"];
const EN_AIR = "EN 12021";
const US_RULE = "29 CFR 1910.134";
const BENCH = "vfdb 0804";

/** Restated from the published pages, one row a figure; "as quoted" where another page quotes the source. */
const PUBLISHED: Readonly<Record<string, readonly Row[]>> = {
  "open-circuit.yaml": [
    ["charge", { "at-least": "90 % of rated-pressure" }, "Q", "FwDV 7"],
    ["charge upper", "110 % of rated-pressure", "C"],
    ["charge caution", { below: "95 % of rated-pressure" }, "C"],
    ["rule rated-pressure-known", ["200 bar", "300 bar"], "C"],
    ["leak-drop caution", { above: "5 bar" }, "C"],
    ["leak-drop", { "at-most": "10 bar" }, "Q", "Fire-training procedure for the general check"],
    ["warning-band", { nominal: "55 bar", "plus-minus": "5 bar" }, "Q", "EN 137"],
    ["mask-drop", { "at-most": "0 bar" }, "C"],
    ["line-full-length", { "at-least": "5.95 m" }, "C"],
    ["line-short-stop", { between: ["1.2 m", "1.25 m"] }, "C"],
    ["pre-alarm-time", { between: ["25 s", "35 s"] }, "C"],
    ["full-alarm-time", { between: ["5 s", "15 s"] }, "C"],
    ["telemetry-time", { "at-most": "5 s" }, "Q", "BS 8608"],
    ["worn-drop", { "at-least": "50 bar" }, "Q", "Fire-training procedure for the monthly test"],
    ["daily/monthly-seen within", "P30D", "P", "30 CFR 49.6(b)"],
    ["daily/charge apart", ...APART],
    ["daily/leak start", ...START],
    ["daily/leak lasting", ...MINUTE],
    ["daily/mask-seal start", ...START],
    ["daily/mask-seal lasting", ...BREATH],
    ["after-use/charge apart", ...APART],
    ["after-use/leak start", ...START],
    ["after-use/leak lasting", ...MINUTE],
    ["monthly/worn start", ...START],
    ["monthly/charge apart", ...APART],
    ["monthly/leak start", ...START],
    ["monthly/leak lasting", ...MINUTE],
    ["monthly/mask-seal start", ...START],
    ["monthly/mask-seal lasting", ...BREATH],
  ],
  "open-circuit-psi.yaml": [
    ["charge", { above: "90 % of rated-pressure" }, "P", US_RULE],
    ["charge upper", "110 % of rated-pressure", "C"],
    ["rule rated-pressure-known", ["2216 psi", "3000 psi", "4500 psi", "5500 psi"], "Q", "NFPA 1981"],
    ["leak-drop", { "at-most": "100 psi" }, "C"],
    ["warning-band", { between: ["33 % of rated-pressure", "38 % of rated-pressure"] }, "Q", "NFPA 1981"],
    ["pre-alarm-time", { between: ["15 s", "25 s"] }, "C"],
    ["full-alarm-time", { between: ["5 s", "15 s"] }, "C"],
    ["daily/monthly-seen within", "P1M", "P", US_RULE],
    ["daily/leak start", { "at-least": "1500 psi" }, "C"],
    ["daily/leak lasting", ...MINUTE],
  ],
  "mask-workshop.yaml": [
    ["mask-leak", { "at-most": "1 mbar" }, "Q", BENCH],
    ["demand-valve-leak", { below: "1 mbar" }, "Q", BENCH],
    ["static-pressure", { "at-least": "0 mbar", "at-most": "3.9 mbar" }, "Q", BENCH],
    ["tested", "P6M", "P", "DGUV 305-002"],
    ["exhalation-disc", "P4Y", "P", "DGUV 305-002"],
    ["speech-diaphragm", "P6Y", "P", "DGUV 305-002"],
    ["workshop/mask-leak start", { between: ["-10.5 mbar", "-9.5 mbar"] }, "Q", BENCH],
    ["workshop/mask-leak lasting", { "at-least": "60 s" }, "Q", BENCH],
    ["workshop/demand-valve-leak start", { between: ["7 mbar", "8 mbar"] }, "Q", BENCH],
    ["workshop/demand-valve-leak lasting", { "at-least": "60 s" }, "Q", BENCH],
  ],
  "cylinders.yaml": [
    ["dent-depth", { "at-most": "1.5 mm" }, "P", "Canada SOR/2010-120"],
    ["requalified", "P5Y", "P", "49 CFR 180.209"],
    ["requalified-un-steel", "P10Y", "P", "49 CFR 180.209"],
    ["life-un-composite", "P15Y", "P", "49 CFR 180.209"],
  ],
  "breathing-air.yaml": [
    ["oxygen", [{ for: { edition: "en-2014" }, accept: { nominal: "21 %", "plus-minus": "1 %" } }], "Q", EN_AIR],
    [
      "carbon-monoxide",
      [
        { for: { edition: "en-2014" }, accept: { "at-most": "5 ppm" } },
        { for: { edition: "en-1999" }, accept: { "at-most": "15 ppm" } },
      ],
      "Q",
      EN_AIR,
    ],
    ["carbon-dioxide", [{ for: { edition: "en-2014" }, accept: { "at-most": "500 ppm" } }], "Q", EN_AIR],
    ["oil", [{ for: { edition: "en-2014" }, accept: { "at-most": "0.5 mg/m3" } }], "Q", EN_AIR],
    ["oxygen-us", { between: ["19.5 %", "23.5 %"] }, "P", US_RULE],
    ["carbon-monoxide-us", { "at-most": "10 ppm" }, "P", US_RULE],
    ["carbon-dioxide-us", { "at-most": "1000 ppm" }, "P", US_RULE],
    ["oil-us", { "at-most": "5 mg/m3" }, "P", US_RULE],
    ["rule water-was-sampled", ["0 mg/m3", "0 mg/m3"], "C"],
    ["rule water-from-40-bar", ["40 bar", "0 mg/m3"], "Q", EN_AIR],
    [
      "water-in-cylinder",
      {
        fact: "cylinder-pressure",
        rows: [
          { "up-to": "200 bar", accept: { "at-most": "50 mg/m3" } },
          { "up-to": "300 bar", accept: { "at-most": "35 mg/m3" } },
        ],
      },
      "Q",
      EN_AIR,
    ],
    ["water-at-outlet", { "at-most": "25 mg/m3" }, "Q", EN_AIR],
    ["sampled", "P3M", "P", "WAC 296-305-04001"],
  ],
  "face-fit.yaml": [
    ["fit-factor", { "at-least": 500 }, "P", US_RULE],
    ["fitted", "P1Y", "P", US_RULE],
  ],
};

describe("the figures of the shipped policies", () => {
  it("are those of these files", () => {
    expect(readdirSync(FOLDER).sort()).toEqual(Object.keys(PUBLISHED).sort());
  });

  it.each(Object.keys(PUBLISHED))("%s holds each figure with its source and mark, and no other", (file) => {
    expect([...listFigures(file)].sort()).toEqual([...(PUBLISHED[file] ?? [])].sort());
  });

  it("come with deference and cautions", () => {
    for (const file of readdirSync(FOLDER)) {
      const policy = readShipped(file);
      expect(policy.deference).toContain("competent person");
      expect(policy.cautions.length).toBeGreaterThanOrEqual(2);
    }
  });
});
