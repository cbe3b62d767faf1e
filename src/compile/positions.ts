import type { Plan } from "../model/index.js";
import { locatePlace, type Place } from "../source/index.js";

type Spot = [number, number, number];

/** Collects where the policy asks for each requirement and states its limit. */
export function createPositions() {
  const files: string[] = [];
  const at = new Map<string, { where: Spot; limitAt?: Spot }>();
  const toSpot = (place: Place): Spot => {
    const { file, line, column } = locatePlace(place);
    if (!files.includes(file)) files.push(file);
    return [files.indexOf(file), line, column];
  };
  return {
    add(key: string, where: Place, limitAt: Place | undefined): void {
      at.set(key, { where: toSpot(where), ...(limitAt === undefined ? {} : { limitAt: toSpot(limitAt) }) });
    },
    list: (): Plan["positions"] => ({ files: [...files], at: Object.fromEntries(at) }),
  };
}
