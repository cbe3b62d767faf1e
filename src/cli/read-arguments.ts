import { parseArgs } from "node:util";
import { findNearest } from "../diagnostics/index.js";

/** One option of a command, as help shows it. */
export interface OptionSpec {
  readonly name: string;
  /** What stands behind it; undefined for a switch. */
  readonly value?: string;
  readonly values?: readonly string[];
  readonly help: string;
}

export interface ReadArguments {
  readonly positionals: readonly string[];
  readonly switches: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** Reads the arguments of a command, or says what is wrong with them, with the option that was probably meant. */
export function readArguments(
  words: readonly string[],
  options: readonly OptionSpec[],
): ReadArguments | { readonly problem: string } {
  const known = new Map(options.map((option) => [option.name, option]));
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      options.map(({ name, value }) => [
        name,
        { type: value === undefined ? ("boolean" as const) : ("string" as const) },
      ]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const positionals: string[] = [];
  const switches = new Set<string>();
  const values = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === "positional") positionals.push(token.value);
    if (token.kind !== "option") continue;
    const option = known.get(token.name);
    if (option === undefined) {
      const nearest = findNearest(token.name, known.keys());
      return {
        problem: `there is no option \`${token.rawName}\`${nearest === undefined ? "" : `; did you mean \`--${nearest}\`?`}`,
      };
    }
    if (option.value === undefined) {
      if (token.value !== undefined) return { problem: `\`${token.rawName}\` takes no value` };
      switches.add(option.name);
    } else if (token.value === undefined) return { problem: `\`${token.rawName}\` needs ${option.value}` };
    else if (option.values?.includes(token.value) === false) {
      return { problem: `\`${token.rawName} ${token.value}\` is none of ${option.values.join(", ")}` };
    } else values.set(option.name, token.value);
  }
  return { positionals, switches, values };
}
