import { readFileSync } from "node:fs";

const TABLE_FILE = "tests/layering/rooms.json";
const PLACE = /(<!-- rooms -->\n)[\s\S]*?(\n<!-- end of rooms -->)/;

interface Room {
  readonly room: string;
  readonly takesIn: string;
  readonly handsOn: string;
  readonly imports: readonly string[];
  readonly importsTypes: readonly string[];
}

/** The map of rooms as the developers' page shows it, from the table that the rules about imports are made of. */
export function renderRoomTable(): string {
  const { rooms }: { rooms: readonly Room[] } = JSON.parse(readFileSync(TABLE_FILE, "utf8"));
  return ["| room | takes in | hands on | may import |", "| --- | --- | --- | --- |", ...rooms.map(renderRoom)].join(
    "\n",
  );
}

/** The page with the map put between its two marks; the page as it was where it has none. */
export function placeRoomTable(page: string): string {
  return page.replace(PLACE, (_, before: string, after: string) => `${before}${renderRoomTable()}${after}`);
}

function renderRoom({ room, takesIn, handsOn, imports, importsTypes }: Room): string {
  const names = [...imports, ...importsTypes.map((name) => `${name} (types)`)];
  return `| \`${room}\` | ${takesIn} | ${handsOn} | ${names.join(", ") || "–"} |`;
}
