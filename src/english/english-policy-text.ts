import {
  type DiagnosticWords,
  joinWords,
  type ParentWords,
  type PartOfPolicy,
  type PolicyTextWords,
} from "../words/index.js";

export const ENGLISH_POLICY_TEXT: PolicyTextWords = {
  found: {
    text: "a text",
    number: "a number",
    flag: "true or false",
    nothing: "nothing",
    list: "a list",
    map: "a map of keys",
    tab: "a tab",
  },
  types: {
    string: "a text",
    number: "a number",
    integer: "a whole number",
    boolean: "`true` or `false`",
    null: "`null`",
    array: "a list",
    object: "a map of keys",
    any: "a value",
  },
  schema: "as-written",
  suchAs: (sentence, example) => `${sentence}, such as \`${example}\``,
  oneOf: (words) => joinWords(words, "or"),
  keyAndValue: "a key, a colon and a value",
  quantityWithPoint: "a number with a decimal point, one space and a unit",
  membersWithPoints: (count) => `${count} members, with decimal points`,
  thePolicy: "the policy",
  member: (number, list) => `member ${number} of \`${list}\``,
  hints: {
    beginning: "begin the policy with `tenbar: 1`",
    writeThis: (text) => `write \`${text}\``,
    unitBehind: (example) => `write the unit after the number, as in \`${example}\``,
    withoutQuotes: (value) => `write \`${value}\` without quotes`,
    asList: (value) => `write it as a list: \`[${value}]\``,
    hyphens: "begin each member with a hyphen and a space",
    writtenLike: (example) => `write it like \`${example}\``,
  },
};

export const ENGLISH_PARENTS: ParentWords = {
  notFromOwnFolder: "a file is named from the policy's own folder, with `./` in front",
  leavesOwnFolder: "a parent lies in the policy's own folder or below it",
  notGiven: "its text was not given",
};

export const ENGLISH_RELATED: DiagnosticWords["related"] = {
  first: "the first one",
  otherOne: "the other one",
  otherCase: "the other case",
  parents: "the parent's",
};

const OPTIONS = {
  scope: "the scope",
  subject: "the subject",
  "former-names": "the former names",
  competence: "the competence",
  order: "the order",
} as const;

export function sayPartOfPolicy(part: PartOfPolicy): string {
  switch (part.kind) {
    case "policy-scope":
      return "the scope of the policy";
    case "gaps":
      return "what a gap weighs";
    case "fact":
    case "instrument":
      return `the ${part.kind} \`${part.name}\``;
    case "check-left-out":
      return `the check \`${part.of}\`, which is left out,`;
    case "unanchored":
      return `a check of which nothing is always judged, of the check \`${part.of}\`,`;
    case "step":
      return `the step \`${part.name}\``;
    case "step-left-out":
      return `the step \`${part.name}\`, which is left out,`;
    case "step-added":
      return `the step \`${part.name}\`, which the parent does not have,`;
    case "requirement-left-out":
      return `the \`${part.requirement}\` of \`${part.name}\`, which is left out,`;
    case "requirement-added":
      return `the \`${part.requirement}\` of \`${part.name}\`, which is new,`;
    case "consequence":
    case "limit":
      return `the ${part.kind} of \`${part.name}\` \`${part.requirement}\``;
    case "interval":
    case "rule":
      return `the ${part.kind} \`${part.name}\` of \`${part.of}\``;
    default:
      return `${OPTIONS[part.kind]} of the check \`${part.of}\``;
  }
}
