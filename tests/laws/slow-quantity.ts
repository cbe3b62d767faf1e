import Fraction from "fraction.js";

/** What a text comes to, or why it comes to nothing. */
export type SlowValue = { readonly value: Fraction; readonly family: string } | { readonly reason: string };

interface Unit {
  readonly dimension: string;
  readonly family: string;
  readonly size: Fraction;
  readonly quantum: Fraction;
}

/** Sizes in pascal and seconds. A psi is 4.4482216152605 N on a square of 0.0254 m: NIST SP 811, from memory. */
const PSI = new Fraction("4.4482216152605").div(new Fraction("0.00064516"));
const MILLIPASCAL = new Fraction(1, 1000);
const pressure = (size: string): Unit => ({
  dimension: "pressure",
  family: "decimal",
  size: new Fraction(size),
  quantum: MILLIPASCAL,
});
const duration = (size: number): Unit => ({
  dimension: "duration",
  family: "time",
  size: new Fraction(size),
  quantum: new Fraction(1, 1000),
});

const UNITS: ReadonlyMap<string, Unit> = new Map([
  ["bar", pressure("100000")],
  ["mbar", pressure("100")],
  ["kPa", pressure("1000")],
  ["MPa", pressure("1000000")],
  ["Pa", pressure("1")],
  ["psi", { dimension: "pressure", family: "psi", size: PSI, quantum: PSI.div(10_000) }],
  ["s", duration(1)],
  ["min", duration(60)],
  ["h", duration(3600)],
  ["dB", { dimension: "sound", family: "sound", size: new Fraction(1), quantum: new Fraction(1, 1000) }],
]);

const NUMBER = /^-?(0|[1-9][0-9]{0,14})(\.[0-9]{1,15})?$/;

/** Reads recorded evidence: missing, unreadable, no-unit, unknown-unit, wrong-dimension, too-fine, in this order. */
export function readSlowly(evidence: unknown, dimension: string): SlowValue {
  if (evidence === undefined || evidence === null) return { reason: "missing" };
  if (Array.isArray(evidence) && evidence.length === 0) return { reason: "missing" };
  if (typeof evidence !== "string") return { reason: typeof evidence === "number" ? "no-unit" : "unreadable" };
  if (evidence.trim() === "") return { reason: "missing" };
  const [number = "", name, ...rest] = evidence.split(" ");
  if (!NUMBER.test(number) || rest.length > 0) return { reason: "unreadable" };
  if (name === undefined) return { reason: "no-unit" };
  const unit = UNITS.get(name);
  if (unit === undefined) return { reason: "unknown-unit" };
  if (unit.dimension !== dimension) return { reason: "wrong-dimension" };
  const value = new Fraction(number).mul(unit.size);
  if (value.div(unit.quantum).d !== 1n) return { reason: "too-fine" };
  return { value, family: unit.family };
}

/** A limit of a policy, which is always readable here. */
export function readLimit(text: unknown): Fraction {
  for (const dimension of ["pressure", "duration"]) {
    const read = readSlowly(text, dimension);
    if ("value" in read) return read.value;
  }
  throw new Error(`no limit: ${String(text)}`);
}
