/** Why a text is no quantity. */
export type Fault = "missing" | "unreadable" | "no-unit" | "unknown-unit" | "wrong-dimension" | "too-fine";

export type UnitTable = Readonly<Record<string, number>>;

/** Whole quanta per unit: mPa, ms and µm. Units that the brigade does not write down are left out. */
export const PRESSURE: UnitTable = { bar: 100_000_000, mbar: 100_000, kPa: 1_000_000, MPa: 1_000_000_000, Pa: 1000 };
export const DURATION: UnitTable = { s: 1000, min: 60_000, h: 3_600_000 };
export const LENGTH: UnitTable = { m: 1_000_000, cm: 10_000, mm: 1000 };

const ALL_UNITS: readonly string[] = [PRESSURE, DURATION, LENGTH].flatMap((table) => Object.keys(table));
const MOST_KNOWN = 2048;

/** Makes a reader of quantities in the units of one table: whole quanta, or the fault. It remembers the texts it has read. */
export function createReader(units: UnitTable): (value: unknown) => number | Fault {
  const known = new Map<string, number | Fault>();
  return (value) => {
    if (typeof value === "string") {
      const before = known.get(value);
      if (before !== undefined) return before;
      const read = readText(value, units);
      if (known.size >= MOST_KNOWN) known.clear();
      known.set(value, read);
      return read;
    }
    if (value === undefined || value === null) return "missing";
    if (typeof value === "number") return Number.isFinite(value) ? "no-unit" : "unreadable";
    return Array.isArray(value) && value.length === 0 ? "missing" : "unreadable";
  };
}

function readText(text: string, units: UnitTable): number | Fault {
  if (text.trim() === "") return "missing";
  const match = /^(-?)(0|[1-9]\d*)(?:\.(\d+))?(?: (\S+))?$/.exec(text);
  if (match === null) return "unreadable";
  const [, minus, whole = "", fraction = "", symbol] = match;
  if (symbol === undefined) return "no-unit";
  const scale = Object.hasOwn(units, symbol) ? units[symbol] : undefined;
  if (scale === undefined) return ALL_UNITS.includes(symbol) ? "wrong-dimension" : "unknown-unit";
  if (whole.length > 15) return "unreadable";
  if (fraction.length > 15) return "too-fine";
  const power = 10n ** BigInt(fraction.length);
  const parts = BigInt(fraction === "" ? "0" : fraction) * BigInt(scale);
  if (parts % power !== 0n) return "too-fine";
  const size = Number(BigInt(whole) * BigInt(scale) + parts / power);
  if (size > Number.MAX_SAFE_INTEGER) return "unreadable";
  return minus === "" ? size : 0 - size;
}
