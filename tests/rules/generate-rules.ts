import fc from "fast-check";
import { ROLES, SHIFTS } from "./rule-samples.js";

/** A rule, and the same for json-logic-js: quantities as whole numbers of one unit, dates as full texts. */
export interface Generated {
  readonly term: unknown;
  readonly plain: unknown;
}

type Rules = fc.Arbitrary<Generated>;
/** What kind of value a term has; texts of one vocabulary are only compared with each other. */
type Kind = "role" | "shift" | "keeper" | "date" | Size;
type Size = "pressure" | "duration" | "temperature" | "difference" | "count";

const KEEPERS = ["Ash", "Rowan", "Lowmere 3", ""] as const;
const SIZES: readonly Size[] = ["pressure", "duration", "temperature", "difference", "count"];
const KINDS: readonly Kind[] = ["role", "shift", "keeper", "date", ...SIZES];

const one = (values: readonly Generated[]): Rules => fc.constantFrom(...values);
const same = (value: unknown): Generated => ({ term: value, plain: value });

/** Values as policies and records write them; few of each kind, so that equal ones meet often. */
export const VALUES: Readonly<Record<Kind | "flag", Rules>> = {
  flag: one([true, false].map(same)),
  role: one(ROLES.map(same)),
  shift: one(SHIFTS.map(same)),
  keeper: one(KEEPERS.map(same)),
  date: one([
    ...["2026-02-28", "2026-03-01", "2026-03-02", "2026-12-31"].map(same),
    { term: "2026-03", plain: "2026-03-01" },
  ]),
  // Unit of the numbers: 0.1 bar.
  pressure: one([
    ...[0, 1, 2, 10].flatMap((tenths) => [
      { term: `${tenths / 10} bar`, plain: tenths },
      { term: `${tenths * 10} kPa`, plain: tenths },
    ]),
    { term: "-0.1 bar", plain: -1 },
    { term: "1 MPa", plain: 100 },
  ]),
  // Unit: 1 s.
  duration: one([
    ...[0, 1, 59, 60].map((seconds) => ({ term: `${seconds} s`, plain: seconds })),
    { term: "1 min", plain: 60 },
    { term: "0.5 min", plain: 30 },
  ]),
  // Unit: 0.01 K.
  temperature: one([
    { term: "0 Cel", plain: 27_315 },
    { term: "273.15 K", plain: 27_315 },
    { term: "1 Cel", plain: 27_415 },
    { term: "280 K", plain: 28_000 },
  ]),
  difference: one([
    { term: "0 K", plain: 0 },
    { term: "1 K", plain: 100 },
    { term: "-1 K", plain: -100 },
    { term: "6.85 K", plain: 685 },
  ]),
  count: one([0, 1, 2, 3].map(same)),
};

type NamesOfKind = Partial<Record<Kind | "flag", readonly string[]>>;

/** The names of the outer scope, and of a member of its list. */
export const FACTS = {
  flag: ["trained", "stored"],
  role: ["role"],
  shift: ["shift"],
  keeper: ["keeper"],
  date: ["commissioned", "inspected"],
  pressure: ["rated", "leak.start", "leak.end"],
  duration: ["hold.lasting"],
  temperature: ["indoors", "outdoors"],
  count: ["crew"],
} as const satisfies NamesOfKind;
export const FIELDS = {
  keeper: ["id"],
  flag: ["lined"],
  pressure: ["ratedPressure"],
  date: ["requalifiedOn"],
} as const satisfies NamesOfKind;
export const LIST = "subject.cylinders";

const write = (operator: string, operands: readonly Generated[]): Generated => ({
  term: { [operator]: operands.map(({ term }) => term) },
  plain: { [operator]: operands.map(({ plain }) => plain) },
});

function writeWith(operator: string, ...operands: readonly Rules[]): Rules {
  return fc.tuple(...operands).map((written) => write(operator, written));
}

function readName(name: string): Generated {
  return { term: { var: name }, plain: { var: name } };
}

/** json-logic-js knows no `count`; it can filter, and a `length` is added to it. */
function writeCount(list: Generated, holds: Generated): Generated {
  return { term: write("count", [list, holds]).term, plain: { length: [{ filter: [list.plain, holds.plain] }] } };
}

/**
 * Valid rules over the names of one scope, at most `depth` operators deep. `sure` terms show their type by themselves;
 * others may be literals, which the terms beside them explain.
 */
class RuleGenerator {
  private readonly made = new Map<string, Rules>();

  constructor(
    private readonly names: NamesOfKind,
    private readonly members: RuleGenerator | undefined,
  ) {}

  flag(depth: number): Rules {
    return this.once(`flag ${depth}`, () => this.makeFlag(depth));
  }

  private once(key: string, make: () => Rules): Rules {
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const rules = make();
    this.made.set(key, rules);
    return rules;
  }

  private makeFlag(depth: number): Rules {
    const leaves = [one((this.names.flag ?? []).map(readName)), VALUES.flag];
    if (depth === 0) return fc.oneof(...leaves);
    const inner = this.flag(depth - 1);
    const several = fc.array(inner, { minLength: 1, maxLength: 3 });
    const lists = this.listOperators(["all", "some", "none"], depth);
    // Why: equal shares, since most of the comparisons would otherwise crowd the other operators out.
    return fc.oneof(
      fc.oneof(...leaves),
      several.map((terms) => write("and", terms)),
      several.map((terms) => write("or", terms)),
      inner.map(({ term, plain }) => ({ term: { "!": term }, plain: { "!": plain } })),
      this.choose(inner, inner, depth),
      ...this.comparisons(depth),
      ...(lists.length === 0 ? [] : [fc.oneof(...lists)]),
    );
  }

  private comparisons(depth: number): readonly Rules[] {
    const kinds = this.kinds();
    const equality = kinds.flatMap((kind) => ["==", "!="].map((sign) => this.pair(sign, kind, depth - 1)));
    const sized = kinds.filter((kind) => kind === "date" || isSize(kind));
    const order = sized.flatMap((kind) => ["<", "<=", ">", ">="].map((sign) => this.pair(sign, kind, depth - 1)));
    const between = sized.flatMap((kind) =>
      ["<", "<="].map((sign) => {
        const any = this.value(kind, depth - 1, false);
        return writeWith(sign, any, this.value(kind, depth - 1, true), any);
      }),
    );
    const within = kinds.map((kind) =>
      fc
        .tuple(this.value(kind, depth - 1, true), fc.array(VALUES[kind], { minLength: 1, maxLength: 3 }))
        .map(([item, list]) =>
          write("in", [item, { term: list.map(({ term }) => term), plain: list.map(({ plain }) => plain) }]),
        ),
    );
    return [equality, order, between, within].map((rules) => fc.oneof(...rules));
  }

  private listOperators(operators: readonly string[], depth: number): readonly Rules[] {
    const holds = this.members?.flag(Math.min(depth - 1, 2));
    return holds === undefined
      ? []
      : operators.map((operator) => writeWith(operator, fc.constant(readName(LIST)), holds));
  }

  /** Two terms of which one is sure, either way round. */
  private pair(sign: string, kind: Kind, depth: number): Rules {
    const terms = fc.tuple(this.value(kind, depth, true), this.value(kind, depth, false), fc.boolean());
    return terms.map(([sure, any, isTurned]) => write(sign, isTurned ? [any, sure] : [sure, any]));
  }

  private choose(value: Rules, otherwise: Rules, depth: number): Rules {
    const condition = this.flag(depth - 1);
    return fc.oneof(
      writeWith("if", condition, value, otherwise),
      writeWith("if", condition, value, condition, otherwise, otherwise),
    );
  }

  private value(kind: Kind, depth: number, sure: boolean): Rules {
    return this.once(`${kind} ${depth} ${sure}`, () => this.makeValue(kind, depth, sure));
  }

  private makeValue(kind: Kind, depth: number, sure: boolean): Rules {
    const names = this.namesOf(kind);
    const leaves = names.length === 0 ? [] : [one(names.map(readName))];
    if (!sure) leaves.push(VALUES[kind]);
    if (depth > 0)
      leaves.push(this.choose(this.value(kind, depth - 1, sure), this.value(kind, depth - 1, false), depth));
    if (isSize(kind)) leaves.push(...this.arithmetic(kind, Math.max(depth, 1) - 1, sure, depth > 0));
    return fc.oneof(...leaves);
  }

  private arithmetic(kind: Size, depth: number, sure: boolean, isDeep: boolean): readonly Rules[] {
    const fromOthers = [
      ...(kind === "difference" ? [this.pair("-", "temperature", depth)] : []),
      ...(kind === "count" && this.members !== undefined ? [this.counts(this.members)] : []),
    ];
    if (!isDeep) return fromOthers;
    const first = this.value(kind, depth, sure);
    const other = this.value(kind, depth, false);
    const several = fc.tuple(first, fc.array(other, { maxLength: 2 })).map(([head, tail]) => [head, ...tail]);
    const extremes = ["min", "max"].map((operator) => several.map((terms) => write(operator, terms)));
    if (kind === "temperature") return [...fromOthers, ...extremes];
    const additive = [writeWith("+", first, other), writeWith("+", other, first, other), writeWith("-", first, other)];
    return [...fromOthers, ...extremes, ...additive, writeWith("-", first), writeWith("abs", first)];
  }

  private counts(members: RuleGenerator): Rules {
    return members.flag(1).map((holds) => writeCount(readName(LIST), holds));
  }

  private namesOf(kind: Kind): readonly string[] {
    return this.names[kind] ?? [];
  }

  /** Kinds that have a name here; a temperature difference comes from two temperatures. */
  private kinds(): readonly Kind[] {
    return KINDS.filter((kind) => this.namesOf(kind === "difference" ? "temperature" : kind).length > 0);
  }
}

function isSize(kind: Kind): kind is Size {
  return SIZES.some((size) => size === kind);
}

/** Valid rules whose whole is a flag. */
export function generateRules(depth: number): Rules {
  return new RuleGenerator(FACTS, new RuleGenerator(FIELDS, undefined)).flag(depth);
}
