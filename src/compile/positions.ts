import type { Plan } from "../model/index.js";
import { createLineTable, type LineTable, locatePlace, type Place, type SourceText } from "../source/index.js";

type Spot = [number, number, number];

/** Collects where the policy asks for each requirement and states its limit. */
export function createPositions() {
  const files: string[] = [];
  const at = new Map<string, { where: Spot; limitAt?: Spot }>();
  // Why: each text is cut into lines once, however many places it has.
  const tables = new Map<SourceText, LineTable>();
  const toSpot = (place: Place): Spot => {
    const table = tables.get(place.source) ?? createLineTable(place.source.text);
    tables.set(place.source, table);
    const { file, line, column } = locatePlace(place, table);
    if (!files.includes(file)) files.push(file);
    return [files.indexOf(file), line, column];
  };
  return {
    add(key: string, where: Place, limitAt: Place | undefined): void {
      at.set(key, { where: toSpot(where), ...(limitAt === undefined ? {} : { limitAt: toSpot(limitAt) }) });
    },
    /** The same requirement under another limit. */
    addLimit(key: string, other: string, limitAt: Place): void {
      const known = at.get(key);
      if (known !== undefined) at.set(other, { where: known.where, limitAt: toSpot(limitAt) });
    },
    list: (): Plan["positions"] => ({ files: [...files], at: Object.fromEntries(at) }),
  };
}
