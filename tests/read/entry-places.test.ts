import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { extendPointer, splitPointer } from "../../src/read/json-pointer.js";
import { locatePlace } from "../../src/source/index.js";
import { OPEN_CIRCUIT, readText, SMALL } from "./read-text.js";

function locate(
  text: string,
  pointer: string,
  part?: "key" | "value" | "both",
): readonly [number, number, number, number] {
  const { policy } = readText(text);
  if (policy === undefined) throw new Error("the example is not read");
  const { line, column, endLine, endColumn } = locatePlace(policy.place(pointer, part));
  return [line, column, endLine, endColumn];
}

/** Every scalar with its pointer. */
function listScalars(value: unknown, pointer = ""): readonly (readonly [string, unknown])[] {
  if (typeof value !== "object" || value === null) return [[pointer, value]];
  return Object.entries(value).flatMap(([key, member]) => listScalars(member, extendPointer(pointer, key)));
}

describe("place", () => {
  it.each([
    ["/tenbar", "value", [1, 9, 1, 10]],
    ["/policy/id", "value", [3, 7, 3, 20]],
    ["/policy/id", "key", [3, 3, 3, 5]],
    ["/policy/id", "both", [3, 3, 3, 20]],
    ["/policy", "value", [3, 3, 6, 16]],
    ["/tolerances/leak-drop/accept", "value", [9, 13, 9, 32]],
    ["/tolerances/leak-drop/accept/at-most", "key", [9, 15, 9, 22]],
    ["/checks/daily/steps/1", "value", [18, 9, 20, 30]],
    ["/checks/daily/steps/1", "key", [18, 9, 20, 30]],
    ["/checks/daily/steps/0/drop", "value", [17, 15, 17, 24]],
  ] as const)("of %s, its %s", (pointer, part, expected) => {
    expect(locate(SMALL, pointer, part)).toEqual(expected);
  });

  it("is the value when no part is named", () => {
    expect(locate(SMALL, "/policy/version")).toEqual([5, 12, 5, 15]);
  });

  it("of something unknown is that of its nearest holder", () => {
    expect(locate(SMALL, "/policy/effective/from", "key")).toEqual(locate(SMALL, "/policy", "key"));
    expect(locate(SMALL, "/checks/daily/steps/7")).toEqual(locate(SMALL, "/checks/daily/steps"));
    for (const pointer of ["", "/", "nonsense", "/~2", "//"]) expect(locate(SMALL, pointer)).toEqual([1, 1, 20, 30]);
  });

  it("counts no column for a byte order mark and none for a carriage return", () => {
    expect(locate(`\ufeff${SMALL}`, "/tenbar", "key")).toEqual([1, 1, 1, 7]);
    expect(locate(SMALL.replaceAll("\n", "\r\n"), "/policy/id")).toEqual([3, 7, 3, 20]);
  });

  // The YAML library, reading the stretch alone, is the oracle.
  it("of every value and key of the documented policy holds just that value and key", () => {
    const { policy } = readText(OPEN_CIRCUIT);
    const scalars = listScalars(policy?.document);
    expect(scalars.length).toBeGreaterThan(100);
    for (const [pointer, value] of scalars) {
      const read = (part: "key" | "value"): unknown => {
        const span = policy?.place(pointer, part).span;
        return parse(OPEN_CIRCUIT.slice(span?.start, span?.end));
      };
      if (pointer !== "/deference") expect([pointer, read("value")]).toEqual([pointer, value]);
      const last = splitPointer(pointer).at(-1) ?? "";
      expect([pointer, read("key")]).toEqual([pointer, /^\d+$/.test(last) ? value : last]);
    }
  });
});

// Source: RFC 6901, section 5 (the keys of its example document and their pointers).
describe("JSON pointers", () => {
  it.each([
    ["foo", "/foo"],
    ["", "/"],
    ["a/b", "/a~1b"],
    ["c%d", "/c%d"],
    ["e^f", "/e^f"],
    ["g|h", "/g|h"],
    ["i\\j", "/i\\j"],
    ['k"l', '/k"l'],
    [" ", "/ "],
    ["m~n", "/m~0n"],
  ])("name the key `%s` as %s", (key, pointer) => {
    expect(extendPointer("", key)).toBe(pointer);
    expect(splitPointer(pointer)).toEqual([key]);
  });

  it("name the whole by nothing, and `~01` is not a slash", () => {
    expect(splitPointer("")).toEqual([]);
    expect(splitPointer("/~01")).toEqual(["~1"]);
  });
});
