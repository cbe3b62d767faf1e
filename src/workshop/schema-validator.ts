import { Ajv2020 } from "ajv/dist/2020.js";
import standaloneModule from "ajv/dist/standalone/index.js";
import { build } from "esbuild";
import { listBundledPackages } from "./bundled-packages.js";
import { dropAnnotations, shareParts } from "./shrink-schema.js";

export interface GeneratedValidator {
  /** An ES module without imports that exports one function. */
  readonly code: string;
  /** Its declaration file. */
  readonly declaration: string;
  /** Folders under `node_modules` whose code is in it. */
  readonly packages: readonly string[];
}

/**
 * Compiles a schema into a module that checks a value without a schema compiler and without eval.
 * `exportName` is the name of the function it exports.
 */
export async function generateValidator(
  schema: Readonly<Record<string, unknown>>,
  exportName: string,
): Promise<GeneratedValidator> {
  const ajv = new Ajv2020({
    discriminator: true,
    // Why: without it a required key named like a method of every object (`toString`) is never missed.
    ownProperties: true,
    allErrors: true,
    strict: true,
    // Why: a discriminated union requires its tag where only its members describe it.
    strictRequired: false,
    messages: false,
    inlineRefs: false,
    code: { source: true, esm: true },
  });
  ajv.addSchema(shareParts(dropAnnotations(schema)));
  // Why: nobody asks where in the schema a mistake was noticed, and each notice would name its place.
  const source = standaloneModule
    .default(ajv, { [exportName]: String(schema["$id"]) })
    .replaceAll(/schemaPath:"[^"]*",/g, "");
  const bundled = await bundle(source);
  return { code: bundled.code, declaration: renderDeclaration(exportName), packages: bundled.packages };
}

/** Takes in the helpers that the generated code still requires. */
async function bundle(source: string): Promise<{ code: string; packages: readonly string[] }> {
  const result = await build({
    stdin: { contents: source, resolveDir: process.cwd(), sourcefile: "validator.js", loader: "js" },
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "neutral",
    mainFields: ["module", "main"],
    target: "es2022",
    // Why: nobody reads generated code, and it is half the size.
    minify: true,
    legalComments: "none",
    logLevel: "silent",
  });
  const code = result.outputFiles[0]?.text ?? "";
  const imports = Object.values(result.metafile.outputs).flatMap((output) => output.imports);
  if (code === "" || imports.length > 0) {
    throw new Error("the generated validator still needs a module loader");
  }
  // Invariant: the generator's own code is in every validator, helpers or not.
  const packages = new Set(["node_modules/ajv", ...listBundledPackages(Object.keys(result.metafile.inputs))]);
  return { code, packages: [...packages].sort() };
}

function renderDeclaration(exportName: string): string {
  return `/** One violation: where, which keyword, and that keyword's parameters. */
export interface ShapeError {
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly propertyName?: string;
}

/** Tells whether the value has the shape; \`errors\` is replaced at each call, so copy it out at once. */
export declare const ${exportName}: {
  (value: unknown): boolean;
  errors?: readonly ShapeError[] | null;
};
`;
}
