import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const PACKAGE_FOLDER = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/;
const LICENSE_FILE = /^(licen[cs]e|notice|copying)([.-].*)?$/i;

/** The package folders (`node_modules/yaml`) that the input files of a bundle come from, sorted, each once. */
export function listBundledPackages(inputs: readonly string[]): readonly string[] {
  const folders = inputs.map((input) => PACKAGE_FOLDER.exec(input.replaceAll("\\", "/"))?.[0] ?? "");
  return [...new Set(folders.filter((folder) => folder !== ""))].sort();
}

/** The input files of which something is in an output, by the list that a build left. */
export function listInputs(list: string): readonly string[] {
  const metafile: { outputs: Record<string, { inputs: Record<string, { bytesInOutput: number }> }> } = JSON.parse(list);
  // Why: of a package that is read, all that nothing uses is left out again.
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  return inputs.filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([input]) => input);
}

/** The notice that accompanies bundled code: name, version and the licence texts of each package folder. */
export function renderNotice(folders: readonly string[]): string {
  const head = "tenbar contains code of the following packages.\n";
  return [head, ...[...new Set(folders)].sort().map(renderPackage)].join(`\n${"-".repeat(80)}\n\n`);
}

/** The line under which the notice tells of a package: its name, version and licence, as the package states them. */
export function headPackage(folder: string): string {
  const manifest: unknown = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return `${readText(manifest, "name")} ${readText(manifest, "version")} (${readText(manifest, "license")})`;
}

function renderPackage(folder: string): string {
  const texts = readdirSync(folder)
    .filter((file) => LICENSE_FILE.test(file))
    .sort()
    .map((file) => readFileSync(join(folder, file), "utf8").trim());
  if (texts.length === 0) throw new Error(`${folder} is bundled but states no licence text`);
  return `${headPackage(folder)}\n\n${texts.join("\n\n")}\n`;
}

function readText(manifest: unknown, key: "name" | "version" | "license"): string {
  const value = typeof manifest === "object" && manifest !== null ? Reflect.get(manifest, key) : undefined;
  if (typeof value !== "string") throw new Error(`a bundled package states no ${key}`);
  return value;
}

/** The list that an earlier step left in a file, none where the file is not there. */
export function readPackageList(file: string): readonly string[] {
  if (!existsSync(file)) return [];
  const list: unknown = JSON.parse(readFileSync(file, "utf8"));
  if (!Array.isArray(list)) throw new Error(`${file} is not a list`);
  return list.map(String);
}
