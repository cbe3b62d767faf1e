import type { DiagnosticTexts, ReadTextShapes } from "../words/index.js";

/** A text that is not, or not only, the part of YAML that policies are written in. */
export const ENGLISH_READ_TEXT_TEXTS = {
  "read/too-large": {
    message: ({ bytes }) => `the policy has ${bytes} bytes, which is too many`,
    wanted: ({ most }) => `at most ${most} bytes`,
    mend: () => "split it into a policy and another one that extends it",
  },
  "read/too-deep": {
    message: ({ most }) => `maps and lists are nested more than ${most} deep`,
    wanted: ({ most }) => `at most ${most} levels`,
    mend: () => "check for brackets that are not closed",
  },
  "read/too-many-nodes": {
    message: ({ most }) => `the policy has more than ${most} keys and values`,
    wanted: ({ most }) => `at most ${most} keys and values`,
    mend: () => "split it into a policy and another one that extends it",
  },
  "read/control-character": {
    message: ({ found, count }) => `${found ?? "a control character"} must not stand in a policy${countOthers(count)}`,
    wanted: () => "printable characters, blanks and line ends",
    mend: () => "delete it, and save the file as plain UTF-8 text",
  },
  "read/lone-surrogate": {
    message: ({ found, count }) => `${found ?? "a character"} is half a character${countOthers(count)}`,
    wanted: () => "whole characters",
    mend: () => "type the character again, and save the file as plain UTF-8 text",
  },
  "read/empty": {
    message: () => "the policy is empty",
    wanted: () => "a policy that begins with `tenbar: 1`",
  },
  "read/several-documents": {
    message: () => "a second document begins here",
    wanted: () => "one document",
    mend: () => "put each policy into a file of its own, and delete the `---` line",
  },
  "read/directive": {
    message: ({ found }) => `the directive \`${found ?? "%"}\` is not read`,
    wanted: () => "YAML 1.2 without directives",
    mend: () => "delete the line",
  },
  "read/anchor": {
    message: ({ found }) => `the anchor \`${found ?? "&"}\` is not read`,
    wanted: () => "every value written where it is used",
    mend: () => "delete it; if the text begins with `&`, put it in quotes",
  },
  "read/alias": {
    message: ({ found }) => `the alias \`${found ?? "*"}\` is not read`,
    wanted: () => "every value written where it is used",
    mend: () => "write the value out, or name a tolerance; if the text begins with `*`, put it in quotes",
  },
  "read/merge-key": {
    message: () => "the merge key `<<` is not read",
    wanted: () => "every key written where it is used",
    mend: () => "write the keys out; `extends` is the one way to share",
  },
  "read/tag": {
    message: ({ found }) => `the tag \`${found ?? "!"}\` is not read`,
    wanted: () => "values without tags",
    mend: () => "delete it; if the text begins with `!`, put it in quotes",
  },
  "read/unclosed-quote": {
    message: ({ quote }) => `the text begins with ${quote} and never ends`,
    wanted: ({ quote }) => `a closing ${quote}`,
    mend: ({ quote }) => `put ${quote} after the text`,
  },
  "read/stray-quote": {
    message: ({ quote, text, found }) =>
      text === undefined ? `${quote} closes nothing here` : `${quote} closes \`${found ?? ""}\`, and none opens it`,
    wanted: () => "a quote at both ends or at neither",
    mend: ({ quote, text }) =>
      text === undefined ? `delete ${quote}` : `write \`${text}\`, or \`${quote}${text}${quote}\` where it is a text`,
  },
  "read/text-behind-quote": {
    message: ({ found }) => `\`${found ?? ""}\` stands after the closing quote`,
    wanted: () => "nothing after a closing quote on its line",
    mend: () => "put the whole text in quotes, and write a quote inside it twice (`'it''s'`)",
  },
  "read/unclosed-bracket": {
    message: ({ bracket }) => `\`${bracket}\` is not closed before its lines end`,
    wanted: ({ closing }) => `a closing \`${closing}\``,
    mend: ({ closing }) => `put \`${closing}\` at its end; if it goes over several lines, indent them further`,
  },
  "read/tab-indent": {
    message: () => "the line is indented with a tab",
    wanted: () => "blanks before the key",
    mend: () => "indent with spaces",
  },
  "read/bad-indentation": {
    message: () => "the line is indented like no line above it that it could belong to",
    wanted: () => "the same number of spaces before all keys of one map",
    mend: () => "give it as many spaces as the keys it belongs with",
  },
  "read/no-space-behind-colon": {
    message: ({ key }) => `no space stands after the colon of \`${key}\``,
    wanted: ({ key }) => `\`${key}: \` and the value`,
    mend: () => "put an ordinary space after the colon",
  },
  "read/no-colon": {
    message: ({ found }) => `\`${found ?? ""}\` stands where a key is wanted and has no colon`,
    wanted: () => "a key, a colon and a value",
    mend: () => "put a colon and a value after it; if it continues the text above, indent it further",
  },
  "read/colon-in-text": {
    message: ({ found }) => `a second colon with a space stands in \`${found ?? ""}\``,
    wanted: () => "one key and one value a line",
    mend: () => "put the text in quotes, or the second key on a line of its own",
  },
  "read/reserved-start": {
    message: ({ character }) => `a text must not begin with \`${character}\` unless it is in quotes`,
    mend: () => "put the text in quotes",
  },
  "read/bad-escape": {
    message: () => "the backslash does not begin a known escape",
    wanted: () => "`\\\\` for a backslash between double quotes",
    mend: () => "write the backslash twice, or use single quotes",
  },
  "read/bad-yaml": {
    message: ({ found }) => `\`${found ?? ""}\` cannot be read as YAML here`,
    mend: () => "check the line and the one above it for brackets, quotes and indentation",
  },
  "read/text-cut-by-comment": {
    message: ({ found }) => `the text is \`${found ?? ""}\`: a \`#\` after a space begins a comment`,
    mend: ({ whole }) => `quote it (\`"${whole}"\`), or put a space after the \`#\` of a comment`,
  },
} satisfies Pick<DiagnosticTexts, keyof ReadTextShapes>;

function countOthers(count: number): string {
  return count === 1 ? "" : `, and ${count - 1} more like it`;
}
