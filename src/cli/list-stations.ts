export interface NamedStations {
  /** Stations that a scope in the plan names, each once, in alphabetical order. */
  readonly named: readonly string[];
  /** Whether a rule reads the station, and may speak of any. */
  readonly isRead: boolean;
}

/** The stations that a plan depends on: those in its scopes, wherever they stand. */
export function listStations(plan: unknown): NamedStations {
  const named = new Set<string>();
  let isRead = false;
  const open: unknown[] = [plan];
  while (open.length > 0) {
    const value = open.pop();
    if (typeof value !== "object" || value === null) continue;
    if ("op" in value && "name" in value && value.op === "fact" && value.name === "station") isRead = true;
    for (const key of ["for", "only"]) {
      for (const name of readNames(Object.entries(value).find(([one]) => one === key)?.[1])) named.add(name);
    }
    open.push(...Object.values(value));
  }
  return { named: [...named].sort(), isRead };
}

/** The stations of one scope. */
function readNames(scope: unknown): readonly string[] {
  if (typeof scope !== "object" || scope === null || !("station" in scope)) return [];
  return [scope.station].flat().filter((name) => typeof name === "string");
}
