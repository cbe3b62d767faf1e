import { parseArgs } from "node:util";
import { parseDate } from "../quantities/index.js";
import { findNearest } from "../terms/index.js";
import type { ArgumentWords, ProgramWords } from "../words/index.js";

/** One option of a command, as help shows it. */
export interface OptionSpec {
  readonly name: string;
  /** What stands behind it; undefined for a switch. */
  readonly value?: string;
  readonly values?: readonly string[];
  readonly isDate?: true;
  readonly help: string;
}

export interface ReadArguments {
  readonly positionals: readonly string[];
  readonly switches: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

interface OptionToken {
  readonly rawName: string;
  readonly value?: string | undefined;
  readonly inlineValue?: boolean | undefined;
}

/** Reads the arguments of a command, or says what is wrong with them, with the option that was probably meant. */
export function readArguments(
  words: readonly string[],
  options: readonly OptionSpec[],
  said: Pick<ProgramWords, "arguments" | "start">,
): ReadArguments | { readonly problem: string } {
  const known = new Map(options.map((option) => [option.name, option]));
  const positionals: string[] = [];
  const switches = new Set<string>();
  const values = new Map<string, string>();
  for (const token of readTokens(words, options)) {
    if (token.kind === "positional") positionals.push(token.value);
    if (token.kind !== "option") continue;
    const option = known.get(token.name);
    if (option === undefined) {
      const nearest = findNearest(token.name, known.keys());
      return { problem: said.start.noOption(token.rawName, nearest === undefined ? undefined : `--${nearest}`) };
    }
    const problem = values.has(option.name)
      ? said.arguments.twice(token.rawName)
      : findFault(token, option, said.arguments);
    if (problem !== undefined) return { problem };
    if (option.value === undefined) switches.add(option.name);
    else values.set(option.name, token.value ?? "");
  }
  return { positionals, switches, values };
}

function readTokens(words: readonly string[], options: readonly OptionSpec[]) {
  const types = options.map(({ name, value }) => {
    const type = value === undefined ? ("boolean" as const) : ("string" as const);
    return [name, { type }] as const;
  });
  const config = { options: Object.fromEntries(types), allowPositionals: true, strict: false, tokens: true } as const;
  return parseArgs({ ...config, args: [...words] }).tokens;
}

function findFault(
  { rawName, value, inlineValue }: OptionToken,
  option: OptionSpec,
  said: ArgumentWords,
): string | undefined {
  if (option.value === undefined) return value === undefined ? undefined : said.noValue(rawName);
  if (value === undefined || value === "") return said.needs(rawName, option.value);
  if (inlineValue === false && value.startsWith("-") && value !== "-") {
    return said.needsJoined(rawName, option.value, value);
  }
  if (option.values?.includes(value) === false) {
    return said.noneOf(`${rawName} ${value}`, option.values, findNearest(value, option.values));
  }
  if (option.isDate === true && parseDate(value)?.dayGiven !== true) {
    return said.noDay(`${rawName} ${value}`);
  }
  return undefined;
}
