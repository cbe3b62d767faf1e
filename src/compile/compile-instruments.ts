import type { Diagnostics } from "../diagnostics/index.js";
import type { InstrumentPlan, PolicyDocument } from "../model/index.js";
import {
  compareRational,
  type Dimension,
  makeRational,
  mendQuantity,
  parseQuantity,
  rationalOfQuantity,
  unitSymbolsOf,
} from "../quantities/index.js";
import type { ResolvedPolicy } from "../resolve/index.js";
import { findNearest } from "../terms/index.js";

type PolicyInstrument = NonNullable<PolicyDocument["instruments"]>[string];

/** Instruments by name; a figure that cannot be used is reported and the instrument kept, so that its steps are checked too. */
export function compileInstruments(
  resolved: ResolvedPolicy,
  diagnostics: Diagnostics,
): ReadonlyMap<string, InstrumentPlan> {
  const entries = Object.entries(resolved.document.instruments ?? {});
  const plain = new Map(
    entries
      .filter(([, one]) => one["one-of"] === undefined)
      .map(([name, one]) => [name, compileInstrument(name, one, resolved, diagnostics)]),
  );
  const groups = entries.flatMap(([name, one]): [string, InstrumentPlan][] =>
    one["one-of"] === undefined ? [] : [[name, compileGroup(name, one["one-of"], one, plain, resolved, diagnostics)]],
  );
  return new Map([...plain, ...groups]);
}

/** One of several instruments of the same quantity, none of which is such a group itself. */
function compileGroup(
  name: string,
  oneOf: readonly string[],
  instrument: PolicyInstrument,
  plain: ReadonlyMap<string, InstrumentPlan>,
  resolved: ResolvedPolicy,
  diagnostics: Diagnostics,
): InstrumentPlan {
  const pointer = `/instruments/${name}`;
  const others = Object.keys(instrument).filter((key) => key !== "one-of");
  if (others.length > 0) {
    const given = ["one-of", ...others];
    diagnostics.report("plan/needs-one-of", resolved.place(pointer, "key"), { keys: ["one-of", "quantity"], given });
  }
  // Why: a name that is not known says nothing of what the others show.
  const quantity = oneOf.map((member) => plain.get(member)?.quantity).find((one) => one !== undefined);
  oneOf.forEach((member, index) => {
    const place = resolved.place(`${pointer}/one-of/${index}`);
    const found = plain.get(member);
    if (found === undefined) {
      const known = [...plain.keys()];
      const nearest = findNearest(member, known);
      diagnostics.report("plan/unknown-name", place, { thing: "instrument", name: member, known, nearest });
    } else if (found.quantity !== quantity) {
      const params = {
        instrument: member,
        shows: found.quantity ?? ("nothing" as const),
        reads: quantity ?? ("nothing" as const),
      };
      diagnostics.report("plan/instrument-quantity", place, params);
    }
  });
  return {
    name,
    ...(quantity === undefined ? {} : { quantity }),
    rounding: "nearest",
    errors: "independent",
    oneOf: [...oneOf],
  };
}

function compileInstrument(
  name: string,
  instrument: PolicyInstrument,
  resolved: ResolvedPolicy,
  diagnostics: Diagnostics,
): InstrumentPlan {
  const pointer = `/instruments/${name}`;
  const { quantity, division, rounding = "nearest", "max-error": maxError, errors = "independent", range } = instrument;
  if (quantity === undefined) {
    diagnostics.report("plan/instrument-without-quantity", resolved.place(pointer, "key"), { instrument: name });
  } else {
    const read = createFigureCheck(quantity, resolved, diagnostics);
    read.positive(division, `${pointer}/division`, "division");
    read.positive(maxError, `${pointer}/max-error`, "max-error");
    read.range(range, `${pointer}/range`);
  }
  return {
    name,
    ...(quantity === undefined ? {} : { quantity }),
    ...(division === undefined ? {} : { division }),
    rounding,
    ...(maxError === undefined ? {} : { maxError }),
    errors,
    ...(range === undefined ? {} : { range: [...range] }),
  };
}

/** Reads figures of an instrument and reports those that cannot be used. */
function createFigureCheck(quantity: Dimension, { place }: ResolvedPolicy, diagnostics: Diagnostics) {
  const read = (text: string, pointer: string, dimension: Dimension) => {
    const parsed = parseQuantity(text, dimension);
    if (parsed.ok) return rationalOfQuantity(parsed.quantity);
    diagnostics.report("plan/bad-quantity", place(pointer), {
      found: text,
      fault: parsed.fault,
      dimension,
      units: unitSymbolsOf(dimension),
      mend: mendQuantity(text, dimension),
    });
    return undefined;
  };
  const difference = quantity === "temperature" ? "temperature-difference" : quantity;
  return {
    positive(text: string | undefined, pointer: string, key: "division" | "max-error"): void {
      const value = text === undefined ? undefined : read(text, pointer, difference);
      if (text === undefined || value === undefined) return;
      const order = compareRational(value, makeRational(0n));
      if (order === -1 || (order === 0 && key === "division")) {
        diagnostics.report("plan/not-positive", place(pointer), { key, text });
      }
    },
    range(texts: readonly string[] | undefined, pointer: string): void {
      const [lowText, highText] = texts ?? [];
      if (lowText === undefined || highText === undefined) return;
      const low = read(lowText, `${pointer}/0`, quantity);
      const high = read(highText, `${pointer}/1`, quantity);
      if (low !== undefined && high !== undefined && compareRational(low, high) === 1) {
        diagnostics.report("plan/swapped-bounds", place(pointer), { low: lowText, high: highText });
      }
    },
  };
}
