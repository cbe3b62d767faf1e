import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import * as z from "zod";

const FOLDER = "policies/common-practice";

const basisModel = z.looseObject({ kind: z.string(), source: z.string().optional(), seen: z.string().optional() });
const policyModel = z.looseObject({
  tolerances: z
    .record(
      z.string(),
      z.looseObject({
        basis: basisModel,
        accept: z.unknown().optional(),
        cases: z.array(z.unknown()).optional(),
        "accept-by": z.unknown().optional(),
      }),
    )
    .optional(),
  intervals: z.record(z.string(), z.looseObject({ every: z.string(), basis: basisModel })).optional(),
  checks: z.record(
    z.string(),
    z.looseObject({ steps: z.array(z.looseObject({ step: z.string(), basis: basisModel.optional() })) }),
  ),
});

/** How a figure is known: P read in the published text, Q quoted by another page, C common practice, no source. */
type Mark = "P" | "Q" | "C";
type Row = readonly [name: string, value: unknown, mark: Mark, source?: string];

function markOf({ kind, seen }: z.infer<typeof basisModel>): Mark | "M" {
  if (kind === "common-practice") return "C";
  return seen === undefined ? "P" : seen === "quoted" ? "Q" : "M";
}

/** Every figure of a shipped policy with its mark and source: tolerances, intervals, limits written in steps. */
function listFigures(file: string): readonly Row[] {
  const {
    tolerances = {},
    intervals = {},
    checks,
  } = policyModel.parse(parse(readFileSync(`${FOLDER}/${file}`, "utf8")));
  const rows: [string, unknown, z.infer<typeof basisModel> | undefined][] = [
    ...Object.entries(tolerances).map(([name, one]): [string, unknown, typeof one.basis] => [
      name,
      one.accept ?? one.cases ?? one["accept-by"],
      one.basis,
    ]),
    ...Object.entries(intervals).map(([name, { every, basis }]): [string, unknown, typeof basis] => [
      name,
      every,
      basis,
    ]),
    ...Object.entries(checks).flatMap(([check, { steps }]) =>
      steps.flatMap((step) =>
        ["start", "lasting", "apart", "within"]
          .filter((key) => step[key] !== undefined)
          .map((key): [string, unknown, typeof step.basis] => [
            `${check}/${step.step} ${key}`,
            withoutConsequence(step[key]),
            step.basis,
          ]),
      ),
    ),
  ];
  return rows.map(([name, value, basis]) => {
    if (basis === undefined) throw new Error(`${file} ${name} has no basis`);
    const mark = markOf(basis);
    if (mark === "M") throw new Error(`${file} ${name} is from memory`);
    return basis.source === undefined ? [name, value, mark] : [name, value, mark, basis.source];
  });
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
    [
      "dent-depth",
      [{ for: { construction: ["steel", "aluminium", "un-steel"] }, accept: { "at-most": "1.5 mm" } }],
      "P",
      "Canada SOR/2010-120",
    ],
    ["requalified", "P5Y", "P", "49 CFR 180.209"],
    ["requalified-un-steel", "P10Y", "P", "49 CFR 180.209"],
    ["life-un-composite", "P15Y", "P", "49 CFR 180.209"],
  ],
  "breathing-air.yaml": [
    [
      "oxygen",
      [
        { for: { edition: "en-2014" }, accept: { nominal: "21 %", "plus-minus": "1 %" } },
        { for: { edition: "us" }, accept: { between: ["19.5 %", "23.5 %"] } },
      ],
      "Q",
      EN_AIR,
    ],
    [
      "carbon-monoxide",
      [
        { for: { edition: "en-2014" }, accept: { "at-most": "5 ppm" } },
        { for: { edition: "en-1999" }, accept: { "at-most": "15 ppm" } },
        { for: { edition: "us" }, accept: { "at-most": "10 ppm" } },
      ],
      "Q",
      EN_AIR,
    ],
    [
      "carbon-dioxide",
      [
        { for: { edition: "en-2014" }, accept: { "at-most": "500 ppm" } },
        { for: { edition: "us" }, accept: { "at-most": "1000 ppm" } },
      ],
      "Q",
      EN_AIR,
    ],
    [
      "oil",
      [
        { for: { edition: "en-2014" }, accept: { "at-most": "0.5 mg/m3" } },
        { for: { edition: "us" }, accept: { "at-most": "5 mg/m3" } },
      ],
      "Q",
      EN_AIR,
    ],
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
      const policy: { deference: string; cautions: readonly string[] } = parse(
        readFileSync(`${FOLDER}/${file}`, "utf8"),
      );
      expect(policy.deference).toContain("competent person");
      expect(policy.cautions.length).toBeGreaterThanOrEqual(2);
    }
  });
});
