export const DIMENSIONS = [
  "pressure",
  "duration",
  "length",
  "volume",
  "flow",
  "temperature",
  "temperature-difference",
  "sound-level",
  "mass-concentration",
  "fraction",
  "count",
] as const;

export type Dimension = (typeof DIMENSIONS)[number];

/**
 * Units whose readings share one quantum, so that two readings compare as integers.
 *
 * The quantum is `quantumNumerator / quantumDenominator` of the dimension's base quantum (pressure: 1 mPa).
 */
export interface Family {
  readonly id: string;
  readonly dimension: Dimension;
  readonly quantumNumerator: bigint;
  readonly quantumDenominator: bigint;
}

/** A unit of measurement: `value × quantaPerUnit + offsetQuanta` whole quanta of its family. */
export interface Unit {
  /** As printed; empty for a count. */
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly family: Family;
  readonly quantaPerUnit: number;
  /** 0 but for degrees Celsius, whose zero is 273.15 K (SI Brochure, 9th edition, 2.3.1). */
  readonly offsetQuanta: number;
  /** Position in `UNITS`. */
  readonly index: number;
}

/** Freezes a family of `dimension` with its quantum in base quanta. */
function makeFamily(id: string, dimension: Dimension, quantumNumerator = 1n, quantumDenominator = 1n): Family {
  return Object.freeze({ id, dimension, quantumNumerator, quantumDenominator });
}

/** Base quantum 1 mPa. Source: 1 bar = 100 000 Pa exactly (SI Brochure, 9th edition, table 8). */
const DECIMAL_PRESSURE = makeFamily("pressure", "pressure");

/**
 * Quantum 0.0001 psi. Source: 1 psi = 0.45359237 kg × 9.80665 m/s² / (0.0254 m)², which is exactly
 * 8896443230521/1290320000 Pa (international pound and inch; NIST SP 811, appendix B.8).
 */
const POUND_PRESSURE = makeFamily("pressure-psi", "pressure", 8896443230521n, 12903200000n);

/** Quantum 0.0001 mmH2O. Source: conventional millimetre of water, 9.80665 Pa exactly (NIST SP 811, appendix B.8). */
const WATER_PRESSURE = makeFamily("pressure-water", "pressure", 196133n, 200000n);

/** Base quantum 1 ms. */
const DURATION = makeFamily("duration", "duration");
/** Base quantum 1 µm. */
const LENGTH = makeFamily("length", "length");
/** Base quantum 1 mm³, which is 1e-6 L. */
const VOLUME = makeFamily("volume", "volume");
/** Base quantum 1e-6 L/min. */
const FLOW = makeFamily("flow", "flow");
/** Base quantum 1 mK, absolute. */
const TEMPERATURE = makeFamily("temperature", "temperature");
/** Base quantum 1 mK. */
const TEMPERATURE_DIFFERENCE = makeFamily("temperature-difference", "temperature-difference");
/** Base quantum 0.001 dB. */
const SOUND_LEVEL = makeFamily("sound-level", "sound-level");
/** Base quantum 1e-6 mg/m³. */
const MASS_CONCENTRATION = makeFamily("mass-concentration", "mass-concentration");
/** Base quantum 1e-6 %, so 0.01 ppm. */
const FRACTION = makeFamily("fraction", "fraction");
/** Base quantum one piece. */
const COUNT = makeFamily("count", "count");

/** One row of the table: symbol, family, quanta per unit, offset in quanta, other spellings. */
interface UnitRow {
  readonly symbol: string;
  readonly family: Family;
  readonly quantaPerUnit: number;
  readonly offsetQuanta?: number;
  /** The spelling of the Unified Code for Units of Measure (UCUM 2.2), where it differs. */
  readonly ucum?: string;
}

const ROWS: readonly UnitRow[] = [
  { symbol: "bar", family: DECIMAL_PRESSURE, quantaPerUnit: 100_000_000 },
  { symbol: "mbar", family: DECIMAL_PRESSURE, quantaPerUnit: 100_000 },
  { symbol: "kPa", family: DECIMAL_PRESSURE, quantaPerUnit: 1_000_000 },
  { symbol: "MPa", family: DECIMAL_PRESSURE, quantaPerUnit: 1_000_000_000 },
  { symbol: "Pa", family: DECIMAL_PRESSURE, quantaPerUnit: 1000 },
  { symbol: "psi", family: POUND_PRESSURE, quantaPerUnit: 10_000, ucum: "[psi]" },
  { symbol: "mmH2O", family: WATER_PRESSURE, quantaPerUnit: 10_000, ucum: "mm[H2O]" },
  { symbol: "s", family: DURATION, quantaPerUnit: 1000 },
  { symbol: "min", family: DURATION, quantaPerUnit: 60_000 },
  { symbol: "h", family: DURATION, quantaPerUnit: 3_600_000 },
  { symbol: "mm", family: LENGTH, quantaPerUnit: 1000 },
  { symbol: "cm", family: LENGTH, quantaPerUnit: 10_000 },
  { symbol: "m", family: LENGTH, quantaPerUnit: 1_000_000 },
  { symbol: "L", family: VOLUME, quantaPerUnit: 1_000_000, ucum: "l" },
  { symbol: "m3", family: VOLUME, quantaPerUnit: 1_000_000_000 },
  { symbol: "L/min", family: FLOW, quantaPerUnit: 1_000_000, ucum: "l/min" },
  { symbol: "Cel", family: TEMPERATURE, quantaPerUnit: 1000, offsetQuanta: 273_150 },
  { symbol: "K", family: TEMPERATURE, quantaPerUnit: 1000 },
  { symbol: "K", family: TEMPERATURE_DIFFERENCE, quantaPerUnit: 1000 },
  { symbol: "dB", family: SOUND_LEVEL, quantaPerUnit: 1000 },
  { symbol: "mg/m3", family: MASS_CONCENTRATION, quantaPerUnit: 1_000_000 },
  { symbol: "%", family: FRACTION, quantaPerUnit: 1_000_000 },
  { symbol: "ppm", family: FRACTION, quantaPerUnit: 100, ucum: "[ppm]" },
  { symbol: "", family: COUNT, quantaPerUnit: 1 },
];

export const UNITS: readonly Unit[] = Object.freeze(
  ROWS.map(({ symbol, family, quantaPerUnit, offsetQuanta = 0 }, index) =>
    Object.freeze({ symbol, dimension: family.dimension, family, quantaPerUnit, offsetQuanta, index }),
  ),
);

const UNITS_BY_DIMENSION: ReadonlyMap<Dimension, ReadonlyMap<string, Unit>> = new Map(
  DIMENSIONS.map((dimension) => [
    dimension,
    new Map(
      UNITS.filter((unit) => unit.dimension === dimension).flatMap((unit): [string, Unit][] => {
        const ucum = ROWS[unit.index]?.ucum;
        return ucum === undefined
          ? [[unit.symbol, unit]]
          : [
              [unit.symbol, unit],
              [ucum, unit],
            ];
      }),
    ),
  ]),
);

/** Finds a unit of `dimension` by its printed symbol or its UCUM spelling, compared exactly. */
export function findUnit(symbol: string, dimension: Dimension): Unit | undefined {
  return UNITS_BY_DIMENSION.get(dimension)?.get(symbol);
}

/** The printed symbols of a dimension, the usual one first. */
export function unitSymbolsOf(dimension: Dimension): readonly string[] {
  return UNITS.filter((unit) => unit.dimension === dimension).map((unit) => unit.symbol);
}
