import { type Picks, pickFrom } from "../generators/picks.js";
import { isMap, type Path, readAt } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";
import { type Change, CONSEQUENCES, change, walkMaps } from "./change.js";

const BOUNDS = ["at-least", "at-most", "above", "below", "between", "nominal"] as const;
const SWAPPED: Readonly<Record<string, string>> = {
  "at-least": "above",
  above: "at-least",
  "at-most": "below",
  below: "at-most",
};
const ONE_SIDED = Object.keys(SWAPPED);

const isBound = (key: string) => BOUNDS.some((bound) => bound === key);

const listOneSided = (limits: Data) => Object.keys(limits).filter((key) => ONE_SIDED.includes(key));

/** One of the maps of limits that fit, those of caution bands apart. */
function pickLimits(
  policy: Data,
  picks: Picks,
  fits: (limits: Data, path: Path) => boolean,
): readonly [Path, Data] | undefined {
  const all = [...walkMaps(policy)].filter(([path, map]) => Object.keys(map).some(isBound) && fits(map, path));
  return pickFrom(all, picks);
}

const isAccepted = (_limits: Data, path: Path) => !path.includes("caution");

const moveText = (limit: unknown, by: number) =>
  String(limit).replace(/^-?\d+/, (number) => String(Number(number) + by));

function move(value: unknown, by: number): unknown {
  return Array.isArray(value) ? [moveText(value[0], by), value[1]] : moveText(value, by);
}

function moveLimit(isCaution: boolean): Change {
  return (policy, picks) => {
    const [path, limits] = pickLimits(policy, picks, (_, place) => place.includes("caution") === isCaution) ?? [[], {}];
    const key = pickFrom(Object.keys(limits).filter(isBound), picks);
    const by = pickFrom([-10, -1, 1, 10], picks) ?? 1;
    return key === undefined ? undefined : change(policy, [...path, key], move(limits[key], by));
  };
}

const swapBoundKind: Change = (policy, picks) => {
  const [path, limits] = pickLimits(policy, picks, isAccepted) ?? [[], {}];
  const key = pickFrom(listOneSided(limits), picks);
  if (key === undefined) return undefined;
  const { [key]: limit, ...rest } = limits;
  return change(policy, path, { ...rest, [SWAPPED[key] ?? key]: limit });
};

const removeBound: Change = (policy, picks) => {
  const fits = (limits: Data, path: Path) => isAccepted(limits, path) && listOneSided(limits).length > 1;
  const [path, limits] = pickLimits(policy, picks, fits) ?? [[], {}];
  const key = pickFrom(listOneSided(limits), picks);
  return key === undefined ? undefined : change(policy, [...path, key], undefined);
};

/** One bound more, on either side, in the unit that the limits have or as a share. */
const addBound: Change = (policy, picks) => {
  const [path, limits] = pickLimits(policy, picks, isAccepted) ?? [[], {}];
  const [, unit] = /\d+ (bar|s)/.exec(JSON.stringify(limits)) ?? [undefined, "bar"];
  const key = pickFrom(ONE_SIDED, picks) ?? "above";
  const amounts = unit === "s" ? [20, 30, 59, 90] : [0, 5, 9, 55, 200, 275, 300];
  const limit =
    unit === "bar" && picks.next() % 2 === 0
      ? `${pickFrom([1, 2, 80, 92, 98, 100], picks)} % of rated-pressure`
      : `${pickFrom(amounts, picks)} ${unit}`;
  return path.length === 0 ? undefined : change(policy, [...path, key], limit);
};

/** Puts a share in place of a limit in bar, and the other way round. */
const exchangeShare: Change = (policy, picks) => {
  const fits = (limits: Data, path: Path) =>
    isAccepted(limits, path) && listOneSided(limits).some((key) => /bar|%/.test(String(limits[key])));
  const [path, limits] = pickLimits(policy, picks, fits) ?? [[], {}];
  const key = pickFrom(listOneSided(limits), picks);
  if (key === undefined) return undefined;
  const [, amount, unit] = /^(\d+) (%|bar)/.exec(String(limits[key])) ?? [];
  const other = unit === "%" ? `${Number(amount) * 3} bar` : `${Math.ceil(Number(amount) / 3)} % of rated-pressure`;
  return unit === undefined ? undefined : change(policy, [...path, key], other);
};

/** Adds a caution band beside limits that have none, with or without a fact in it, or takes one away. */
const changeCaution: Change = (policy, picks) => {
  const all = [...walkMaps(policy)].filter(([, map]) => isMap(map.accept));
  const [path, owner] = pickFrom(all, picks) ?? [[], {}];
  if (path.length === 0) return undefined;
  if (owner.caution !== undefined && picks.next() % 2 === 0) return change(policy, [...path, "caution"], undefined);
  const isTime = /\d s"/.test(JSON.stringify(owner));
  const bands = isTime
    ? [{ above: "35 s" }]
    : [{ above: "5 bar" }, { above: "2 % of rated-pressure" }, { below: "95 % of rated-pressure" }];
  return change(policy, [...path, "caution"], pickFrom(bands, picks));
};

const changeCase: Change = (policy, picks) => {
  const cases = ["tolerances", "warning", "cases"];
  const list = readAt(policy, cases);
  if (!Array.isArray(list)) return undefined;
  const [first, second] = list;
  const roles = pickFrom([["front-line"], ["training"], ["front-line", "training"]], picks);
  const third = { for: { role: "training" }, accept: { "at-least": "30 bar" } };
  const changed = pickFrom<readonly unknown[]>(
    [[first], [second, first], [second], [{ ...first, for: { role: roles } }, second], [second, third]],
    picks,
  );
  return change(policy, cases, changed);
};

const changeRow: Change = (policy, picks) => {
  const path = ["tolerances", "medium", "accept-by"];
  const rows = readAt(policy, [...path, "rows"]);
  if (!Array.isArray(rows)) return undefined;
  const [first, second] = rows;
  const wider = { ...second, "up-to": "350 bar" };
  const changed = pickFrom(
    [[first], [second], [first, wider], [first, second, { ...second, "up-to": "400 bar" }]],
    picks,
  );
  return change(policy, [...path, "rows"], changed);
};

const setToleranceWeight: Change = (policy, picks) => {
  const all = [...walkMaps(policy)].filter(([, map]) => isMap(map.accept) || map.cases !== undefined);
  const [path] = pickFrom(all, picks) ?? [[], {}];
  if (path.length === 0 || path.includes("cases") || path.includes("rows")) return undefined;
  return change(policy, [...path, "consequence"], pickFrom(CONSEQUENCES, picks));
};

export const LIMIT_CHANGES: Readonly<Record<string, Change>> = {
  "a limit is moved": moveLimit(false),
  "a bound includes its limit or not": swapBoundKind,
  "a bound is taken away": removeBound,
  "a bound is added": addBound,
  "a limit becomes a share, or is one no more": exchangeShare,
  "a caution band is moved": moveLimit(true),
  "a caution band is added or dropped": changeCaution,
  "a case": changeCase,
  "a row": changeRow,
  "the consequence of a tolerance": setToleranceWeight,
};
