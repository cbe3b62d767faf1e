import type { JsonWords, RecordInputWords } from "./json-words.js";

export const ENGLISH_JSON: JsonWords = {
  wanted: {
    value: "a value",
    "value-or-end": "a value or `]`",
    key: "a key in double quotes",
    "key-or-end": "a key in double quotes or `}`",
    colon: "`:`",
    nothing: "the end of the text",
  },
  commaOr: (closing) => `\`,\` or \`${closing}\``,
  unwanted: (found, wanted) => `\`${found}\` stands where ${wanted} is wanted`,
  commaBefore: (closing) => `a comma stands before the closing \`${closing}\``,
  endsEarly: "the JSON text ends too early",
  endlessText: "a text in quotes does not end on its line",
  controlCharacter: "a control character stands in a text",
  badEscape: (sequence) => `\`${sequence}\` begins no character in JSON; a backslash itself is \`\\\\\``,
  singleQuote: "a text is quoted with `'`; JSON wants `\"`",
  noJson: "this is no JSON",
  tooDeep: (levels) => `it nests more than ${levels} levels deep`,
  repeatedKey: (key) => `the key \`${key}\` stands twice in one object`,
};

export const ENGLISH_RECORD_INPUT: RecordInputWords = {
  lineTooLong: (mebibytes) => `the line is longer than ${mebibytes} MiB`,
  endlessLine: "the line does not end within 1 GiB; the rest of the input was not read",
  documentTooLarge: "a JSON document has more than 64 MiB and was not read; write one record a line",
  documentTooLong: "a JSON document has more than 4 million lines and was not read; write one record a line",
};
