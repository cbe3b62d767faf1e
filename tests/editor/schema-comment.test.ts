import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const SCHEMA = "schemas/policy.schema.json";
const COMMENT = /^# yaml-language-server: \$schema=(\S+)$/gm;
const PACKAGE_FILES: readonly string[] = JSON.parse(readFileSync("package.json", "utf8")).files;

const listFiles = (folder: string, ending: RegExp): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => ending.test(file) && !file.includes("node_modules"))
    .map((file) => join(folder, file));

/** Every policy that people open in an editor. */
const POLICIES = [...listFiles("policies", /\.ya?ml$/), ...listFiles("examples", /\.ya?ml$/)];
const PAGES = listFiles("docs", /\.md$/).filter((page) => listPaths(page).length > 0);

/** The schemas that the comments of a file name, as they are written. */
function listPaths(file: string): readonly string[] {
  return [...readFileSync(file, "utf8").matchAll(COMMENT)].map(([, path = ""]) => path);
}

describe("the comment for an editor", () => {
  it("is looked for in the shipped policies and in the examples", () => {
    for (const folder of ["policies", "examples"]) expect(POLICIES.some((file) => file.startsWith(folder))).toBe(true);
    expect(POLICIES.length).toBeGreaterThan(5);
    expect(PAGES.length).toBeGreaterThan(0);
  });

  it.each(POLICIES)("is the first line, and leads to the schema, in %s", (file) => {
    expect(readFileSync(file, "utf8")).toMatch(/^# yaml-language-server: /);
    expect(listPaths(file).map((path) => resolve(dirname(file), path))).toEqual([resolve(SCHEMA)]);
    expect(existsSync(SCHEMA)).toBe(true);
  });

  it.each(PAGES)("leads to a file in %s, or into the package where it is installed", (page) => {
    for (const path of listPaths(page)) {
      const [, inPackage] = path.split("node_modules/tenbar/");
      expect(existsSync(inPackage ?? resolve(dirname(page), path)), path).toBe(true);
    }
  });

  // The package holds the folders side by side, so the same relative paths lead there too.
  it("leads to a file that the package holds beside its policies and pages", () => {
    expect(PACKAGE_FILES).toEqual(expect.arrayContaining(["schemas", "policies", "docs"]));
  });
});
