import type { DiagnosticTexts, ReadShapeShapes } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

/** A text that is YAML and does not have the shape of a policy. */
export const ENGLISH_READ_SHAPE_TEXTS = {
  "read/duplicate-key": {
    message: ({ key }) => `the key \`${key}\` stands here a second time`,
    wanted: () => "every key of a map once",
    mend: ({ entry }) =>
      entry !== undefined
        ? `begin the next entry of the list with a hyphen: \`- ${entry}:\``
        : "delete one of the two, or rename it",
  },
  "read/key-not-text": {
    message: ({ found }) => `the key \`${found ?? ""}\` is not a text`,
    wanted: () => "a word as the key",
    mend: () => "begin the key with a letter, or put it in quotes",
  },
  "read/text-cut-by-comma": {
    message: ({ found, key }) => `a comma cuts the text of \`${key}\` and leaves \`${found ?? ""}\` without a value`,
    wanted: () => "texts with a comma in quotes between `{` and `}`",
    mend: ({ key, whole }) => `put the text in quotes: \`${key}: "${whole}"\``,
  },
  "read/no-value": {
    message: ({ key }) => `\`${key}\` has no value`,
    wanted: ({ expected }) => expected,
    mend: ({ cutByComment }) =>
      cutByComment === undefined
        ? "write its value, or delete the key"
        : `\`#\` begins a comment: put the text in quotes (\`"${cutByComment}"\`)`,
  },
  "read/number-not-exact": {
    message: ({ found }) => `\`${found ?? ""}\` cannot be kept as an exact number`,
    wanted: () => "a number that can be kept exactly, whole ones up to 9007199254740991",
    mend: () => "if it is a mark or an order number, put it in quotes",
  },
  "read/unknown-key": {
    message: ({ key }) => `the key \`${key}\` is not known here`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest, belongsTo = [] }) => {
      if (nearest !== undefined) return `write \`${nearest}\``;
      return belongsTo.length === 0 ? "delete it" : `delete it; it belongs to ${wantOneOf(belongsTo)}`;
    },
  },
  "read/bad-name": {
    message: ({ key }) => `\`${key}\` cannot be a name`,
    wanted: ({ expected }) => expected,
    mend: ({ nearest }) => (nearest === undefined ? "rename it" : `write \`${nearest}\``),
  },
  "read/missing-key": {
    message: ({ key, owner }) => `the key \`${key}\` is missing in ${owner}`,
    wanted: ({ key, expected }) => `\`${key}\` with ${expected}`,
    mend: ({ key }) => `add \`${key}: …\``,
  },
  "read/wrong-type": {
    message: ({ found }) => `${found ?? "this"} cannot stand here`,
    wanted: ({ expected }) => expected,
    mend: ({ hint }) => hint,
  },
  "read/unquoted-text": {
    message: ({ text, readAs }) => `\`${text}\` is read as ${readAs}, and a text is wanted`,
    wanted: () => "a text",
    mend: ({ text }) => `put it in quotes: \`"${text}"\``,
  },
  "read/unknown-value": {
    message: ({ value }) => `\`${value}\` is not a value that is known here`,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest, quoted }) => {
      if (quoted !== undefined) return `write \`${quoted}\` without quotes`;
      return nearest === undefined ? "choose one of the known values" : `write \`${nearest}\``;
    },
  },
  "read/unknown-kind": {
    message: ({ key, value }) => `no \`${key}\` is called \`${value}\``,
    wanted: ({ known }) => wantOneOf(known),
    mend: ({ nearest }) => (nearest === undefined ? "choose one of the known kinds" : `write \`${nearest}\``),
  },
  "read/bad-text": {
    message: ({ text }) => `\`${text}\` does not have the form that is wanted here`,
    wanted: ({ expected }) => expected,
    mend: ({ nearest, hint }) => (nearest === undefined ? hint : `write \`${nearest}\``),
  },
  "read/empty-text": {
    message: () => "the text is empty",
    wanted: ({ expected }) => expected,
    mend: () => "write the text, or delete the key",
  },
  "read/too-long": {
    message: ({ most }) => `the text is longer than ${most} characters`,
    wanted: ({ most }) => `at most ${most} characters`,
    mend: () => "shorten it",
  },
  "read/wrong-count": {
    message: ({ count }) => `the list has ${countMembers(count)}`,
    wanted: ({ least, most }) => describeCount(least, most),
    mend: ({ count, least = 0 }) => (count < least ? "add what is missing" : "delete what is too much"),
  },
  "read/empty-map": {
    message: ({ owner }) => `${owner} has nothing in it`,
    wanted: ({ known }) => (known.length === 0 ? "at least one key" : `at least ${wantOneOf(known)}`),
    mend: () => "write one of its keys with a value, or delete it",
  },
  "read/wrong-shape": {
    message: ({ keyword }) => `this does not have the shape of a policy (${keyword})`,
    mend: () => "compare it with the published schema",
  },
  "read/more-mistakes": {
    message: ({ count }) => `${count} more mistakes are not listed`,
    mend: () => "mend the listed ones first",
  },
} satisfies Pick<DiagnosticTexts, keyof ReadShapeShapes>;

function describeCount(least: number | undefined, most: number | undefined): string {
  if (least === most && least !== undefined) return `exactly ${countMembers(least)}`;
  if (least !== undefined) return `at least ${countMembers(least)}`;
  return `at most ${countMembers(most ?? 0)}`;
}

function countMembers(count: number): string {
  return count === 1 ? "1 member" : `${count} members`;
}
