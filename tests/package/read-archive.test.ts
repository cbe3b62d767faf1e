import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { packFolder } from "../../src/workshop/pack-folder.js";
import { readArchive } from "../../src/workshop/read-archive.js";

const folder = mkdtempSync(join(tmpdir(), "tenbar-archive-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it("reads from an archive what npm packed: every path, long ones too, and every byte", () => {
  const long = join("docs", "a".repeat(60), "b".repeat(60), `${"ö".repeat(60)}.md`).replaceAll("\\", "/");
  const texts = { "package.json": '{ "name": "lowmere", "version": "1.0.0" }', [long]: "x".repeat(1024), empty: "" };
  for (const [path, text] of Object.entries(texts)) {
    mkdirSync(join(folder, "source", dirname(path)), { recursive: true });
    writeFileSync(join(folder, "source", path), text);
  }
  const files = readArchive(packFolder(join(folder, "source"), folder, "lowmere"));
  expect(Object.fromEntries([...files].map(([path, bytes]) => [path, bytes.toString("utf8")]))).toEqual(texts);
});
