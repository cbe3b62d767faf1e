/** Written once for all records; few have more entries. */
const POINTERS: readonly string[] = Array.from({ length: 64 }, (_, place) => `/steps/${place}`);

/** Where an entry stands in its record. */
export function pointToStep(place: number): string {
  return POINTERS[place] ?? `/steps/${place}`;
}
