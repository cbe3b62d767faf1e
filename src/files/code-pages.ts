import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { findPackage } from "./find-package.js";

/** The page of one code, as Markdown. */
export interface CodePage {
  /** Such as `plan/unknown-name`; a reason is kept as `reasons/start-too-low`. */
  readonly code: string;
  readonly text: string;
}

const PAGE = /^([a-z-]+)[/\\]([a-z-]+)\.md$/;

/** The pages that this package ships, sorted by code; none where its folder of documents was left out. */
export function readCodePages(): readonly CodePage[] {
  const folder = join(findPackage(), "docs", "codes");
  return listFiles(folder)
    .flatMap((file) => {
      const [, room, name] = PAGE.exec(file) ?? [];
      if (room === undefined || name === undefined) return [];
      return [{ code: `${room}/${name}`, text: readFileSync(join(folder, file), "utf8") }];
    })
    .sort((one, other) => (one.code < other.code ? -1 : 1));
}

function listFiles(folder: string): readonly string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: "utf8" });
  } catch {
    return [];
  }
}
