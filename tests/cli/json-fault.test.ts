import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findJsonFault } from "../../src/files/find-json-fault.js";
import { parseJson } from "../../src/files/parse-json.js";
import { splitList } from "../../src/files/split-list.js";

/** Source of the grammar: RFC 8259. The platform's own parser is the oracle for what is JSON. */
function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe("a fault in JSON", () => {
  it.each([
    ["{", "the JSON text ends too early", 1],
    ["", "the JSON text ends too early", 0],
    ['"abc', "the JSON text ends too early", 4],
    ['{"a":1,}', "a comma stands before the closing `}`", 7],
    ["[1, ]", "a comma stands before the closing `]`", 4],
    ['{"a" 1}', "`1` stands where `:` is wanted", 5],
    ["{a: 1}", "`a` stands where a key in double quotes or `}` is wanted", 1],
    ["{'a': 1}", "a text is quoted with `'`; JSON wants `\"`", 1],
    ['{"a": NaN}', "`NaN` stands where a value is wanted", 6],
    ['{"a": +1}', "`+1` stands where a value is wanted", 6],
    ["[01]", "`1` stands where `,` or `]` is wanted", 2],
    ["[1}", "`}` stands where `,` or `]` is wanted", 2],
    ["{} {}", "`{` stands where the end of the text is wanted", 3],
    ['{"a": "\\x"}', "`\\x` begins no character in JSON; a backslash itself is `\\\\`", 7],
    ['{"a": "b\nc"}', "a text in quotes does not end on its line", 8],
    ['["\u001F"]', "a control character stands in a text", 2],
    ['["a\tb"]', "a control character stands in a text", 3],
    ["[1] // note", "`//` stands where the end of the text is wanted", 4],
  ])("of `%s` has its words and place", (text, problem, offset) => {
    expect(findJsonFault(text)).toEqual({ problem, offset });
  });

  it("is found exactly where the platform's parser refuses", () => {
    const alphabet = fc.constantFrom(..."{}[],:\"\\'u0123456789eE+-. \ttruefalsn\n\u0001\u001Fé".split(""));
    const anyText = fc.array(alphabet, { maxLength: 12 }).map((letters) => letters.join(""));
    fc.assert(
      fc.property(anyText, (text) => {
        expect(findJsonFault(text) === undefined).toBe(isJson(text));
      }),
      { numRuns: 3000 },
    );
  });

  it("is found wherever one character of sound JSON is taken out or doubled", () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(), fc.boolean(), (json, at, isDoubled) => {
        const place = at % Math.max(json.length, 1);
        const text = json.slice(0, isDoubled ? place + 1 : place) + json.slice(isDoubled ? place : place + 1);
        expect(findJsonFault(json)).toBeUndefined();
        expect(findJsonFault(text) === undefined).toBe(isJson(text));
      }),
      { numRuns: 1000 },
    );
  });
});

describe("JSON as it is taken", () => {
  it("is the platform's value where no key stands twice", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = JSON.stringify(value);
        expect(parseJson(text)).toEqual({ value: JSON.parse(text) });
      }),
    );
  });

  it("is refused where a key stands twice, however deep and however spelt", () => {
    const place = fc.array(fc.constantFrom("list", "object"), { maxLength: 20 });
    fc.assert(
      fc.property(place, fc.string({ unit: "grapheme", minLength: 1 }), (nesting, key) => {
        const spelt = Array.from(
          { length: key.length },
          (_, index) => `\\u${key.charCodeAt(index).toString(16).padStart(4, "0")}`,
        );
        const inner = `{${JSON.stringify(key)}:1,"${spelt.join("")}":2}`;
        const text = nesting.reduce((held, kind) => (kind === "list" ? `[0,${held}]` : `{"x":${held},"y":0}`), inner);
        expect(parseJson(text)).toMatchObject({ refused: "repeated-key" });
        expect(isJson(text)).toBe(true);
      }),
    );
  });

  it("takes the same key in two objects, beside and inside each other", () => {
    expect(parseJson('[{"a":{"a":1}},{"a":[{"a":2}]}]')).toHaveProperty("value");
  });
});

describe("the members of an array", () => {
  it("are the values that the platform's parser sees", () => {
    fc.assert(
      fc.property(fc.array(fc.jsonValue()), fc.nat(3), (list, indent) => {
        const text = JSON.stringify(list, undefined, indent);
        const members = splitList(text);
        expect(members.map((member) => JSON.parse(member.text))).toEqual(JSON.parse(text));
        for (const { text: member, offset } of members) expect(text.slice(offset, offset + member.length)).toBe(member);
      }),
    );
  });
});
