import { build } from "esbuild";
import { describe, expect, it } from "vitest";

const DOORS = ["index", "plan-entry", "node", "german"] as const;
type Door = (typeof DOORS)[number];

/** All that is loaded with each door where the doors share what they have in common, as the package is built. */
async function bundleDoors(): Promise<(door: Door) => string> {
  const { outputFiles, metafile } = await build({
    entryPoints: DOORS.map((door) => `src/${door}.ts`),
    bundle: true,
    splitting: true,
    write: false,
    metafile: true,
    outdir: "dist",
    format: "esm",
    platform: "neutral",
    packages: "external",
    external: ["node:*"],
    charset: "utf8",
    logLevel: "error",
  });
  const textOf = new Map(
    outputFiles.map(({ path, text }) => [path.replaceAll("\\", "/").replace(/^.*\/dist\//, ""), text]),
  );
  const collect = (file: string, seen: Set<string>): string => {
    if (seen.has(file)) return "";
    seen.add(file);
    const { imports = [] } = metafile.outputs[`dist/${file}`] ?? {};
    const others = imports.filter(({ external }) => external !== true).map(({ path }) => path.replace("dist/", ""));
    return [textOf.get(file) ?? "", ...others.map((other) => collect(other, seen))].join("\n");
  };
  return (door) => collect(`${door}.js`, new Set());
}

const ENGLISH_FINDING = "is accepted";
const ENGLISH_DIAGNOSTIC = "the policy has no checks";
const ENGLISH_REPORT = "refer to a competent person";
const GERMAN = /zulässig|Richtlinie|Protokoll/;

describe("a language", async () => {
  const load = await bundleDoors();

  it("comes through the door that is named after it", () => {
    expect(load("german")).toMatch(GERMAN);
    for (const english of [ENGLISH_DIAGNOSTIC, ENGLISH_REPORT]) expect(load("german")).not.toContain(english);
  });

  it.each(["index", "plan-entry", "node"] as const)("other than English does not come with %s", (door) => {
    expect(load(door)).toContain(ENGLISH_FINDING);
    expect(load(door)).not.toMatch(GERMAN);
  });

  it("comes with a saved plan only as far as assessments speak", () => {
    expect(load("index")).toContain(ENGLISH_DIAGNOSTIC);
    for (const english of [ENGLISH_DIAGNOSTIC, ENGLISH_REPORT]) expect(load("plan-entry")).not.toContain(english);
  });
});
