import { build } from "esbuild";
import { describe, expect, it } from "vitest";

/** Bytes, minified: descriptions of all commands, and little else. */
const MOST_BYTES = 12_000;

describe("the start of the program", async () => {
  const { outputFiles, metafile } = await build({
    entryPoints: ["src/cli/main.ts"],
    external: ["./program.js"],
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    platform: "node",
    format: "esm",
  });
  const imports = Object.values(metafile.outputs).flatMap((output) => output.imports);

  it("is small, so that help is there at once", () => {
    expect(outputFiles[0]?.contents.byteLength).toBeGreaterThan(0);
    expect(outputFiles[0]?.contents.byteLength).toBeLessThan(MOST_BYTES);
  });

  it("loads nothing before a command is run", () => {
    expect(imports.length).toBeGreaterThan(0);
    expect(imports.filter(({ kind }) => kind !== "dynamic-import")).toEqual([]);
  });

  it("carries no package", () => {
    const used = Object.values(metafile.outputs).flatMap(({ inputs }) => Object.entries(inputs));
    expect(used.filter(([file, { bytesInOutput }]) => file.includes("node_modules") && bytesInOutput > 0)).toEqual([]);
  });
});
