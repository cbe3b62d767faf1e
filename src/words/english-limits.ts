import type { AssessmentWords, LimitWords, RuleWords } from "./assessment-words.js";
import { sayEnglishEvery, sayEnglishSpan } from "./english-spans.js";

export const ENGLISH_LIMITS: LimitWords = {
  bounds: {
    "at-least": (limit) => `at least ${limit}`,
    "at-most": (limit) => `at most ${limit}`,
    above: (limit) => `above ${limit}`,
    below: (limit) => `below ${limit}`,
  },
  range: (ends) => ends.join(" to "),
  all: (bounds) => bounds.join(" and "),
  share: (value, share, fact) => `${value} (${share} of ${fact})`,
  satisfactory: "satisfactory",
  sameInEveryPlace: "the same in every place",
  equalTo: (text) => `equal to ${text}`,
  otherThan: (text) => `other than ${text}`,
  notPast: "not past",
  notOlder: (span) => `at most ${sayEnglishSpan(span)} old`,
  every: sayEnglishEvery,
  goodTo: (date) => ` (good to ${date})`,
  didNotOccur: "did not occur",
  anyOf: (names) => names.map((name) => `\`${name}\``).join(" or "),
  orders: {
    any: "each step after those that it names",
    position: "the steps as listed, by their places in the record",
    at: "the steps as listed, by their times",
  },
};

export const ENGLISH_RULES: RuleWords = {
  signs: {
    "<": ["below", "before"],
    "<=": ["at most", "not after"],
    ">": ["above", "after"],
    ">=": ["at least", "not before"],
  },
  compare: (left, sign, right) => `${left} is ${sign} ${right}`,
  and: ", and ",
  or: ", or ",
  not: (term) => `not ${term}`,
  choose: (value, condition, otherwise) => `${value} if ${condition}, else ${otherwise}`,
  equal: (left, right) => `${left} is ${right}`,
  unequal: (left, right) => `${left} is not ${right}`,
  least: (terms) => `the least of (${terms})`,
  greatest: (terms) => `the greatest of (${terms})`,
  size: (term) => `the size of ${term}`,
  oneOf: (item, list) => `${item} is one of (${list})`,
  lists: {
    all: (list, holds) => `for every member of ${list} (${holds})`,
    some: (list, holds) => `for at least one member of ${list} (${holds})`,
    none: (list, holds) => `for no member of ${list} (${holds})`,
    count: (list, holds) => `the number of members of ${list} (${holds})`,
  },
};

export const ENGLISH_OPEN_ENDS: AssessmentWords["openEnds"] = {
  from: "any day",
  to: "any day",
  until: "further notice",
};

export const ENGLISH_PROBLEMS: AssessmentWords["problems"] = {
  "no-object": () => "a record is a JSON object",
  "too-deep": ({ most }) => `a record nests at most ${most} levels deep`,
  "not-this-format": () => "`tenbar` must be the number 1",
  "blank-text": ({ key }) => `\`${key}\` must be a text that is not blank`,
  "no-time": () => "`at` must be an instant with offset, a local time, or a date, such as `2026-04-12T07:04:00+01:00`",
  "no-subject": () => "`subject` must be an object",
  "no-steps": () => "`steps` must be a list",
  "too-many-steps": ({ most, count }) => `a record has at most ${most} steps; this one has ${count}`,
  "no-step": () => "a step must be an object with a text `step`",
};
