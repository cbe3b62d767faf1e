import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { placeRoomTable, renderRoomTable } from "../../src/workshop/room-table.js";
import table from "./rooms.json" with { type: "json" };

const ENTRIES = readdirSync("src", { withFileTypes: true });
const FOLDERS = ENTRIES.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
const FILES = ENTRIES.filter((entry) => entry.isFile()).map((entry) => entry.name);
const ROOMS = table.rooms.map(({ room }) => room);
const MAP = "DEVELOPERS.md";

describe("the map of rooms", () => {
  it("names exactly the folders of src", () => {
    expect([...FOLDERS].sort()).toEqual([...ROOMS].sort());
  });

  it("names exactly the doors of src", () => {
    expect([...FILES].sort()).toEqual(table.doors.map(({ door }) => door).sort());
  });

  it.each(table.rooms)("lists $room behind every room that it imports", ({ room, imports, importsTypes }) => {
    const earlier = ROOMS.slice(0, ROOMS.indexOf(room));
    expect(earlier).toEqual(expect.arrayContaining([...imports, ...importsTypes]));
  });

  it.each(ROOMS.filter((room) => room !== "cli" && room !== "workshop"))(
    "finds a plain list of names in src/%s/index.ts",
    (room) => {
      const text = readFileSync(join("src", room, "index.ts"), "utf8");
      const lists = text
        .replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")
        .replaceAll(/export (type )?\{[^}]*\} from "\.\/[^"]+";/g, "");
      expect(lists.trim()).toBe("");
    },
  );

  it.skipIf(!existsSync(MAP))(`is the one that ${MAP} shows (skipped while there is no ${MAP})`, () => {
    expect(readFileSync(MAP, "utf8")).toContain(`<!-- rooms -->\n${renderRoomTable()}\n<!-- end of rooms -->`);
  });

  it("is put between the two marks of a page, and nowhere else", () => {
    expect(placeRoomTable("a\n<!-- rooms -->\nold\n<!-- end of rooms -->\nb")).toBe(
      `a\n<!-- rooms -->\n${renderRoomTable()}\n<!-- end of rooms -->\nb`,
    );
    expect(placeRoomTable("no marks")).toBe("no marks");
  });
});
