// Writes what follows from the models, the map and the pages: the published schemas, the validators that the reading
// rooms use, the table of rooms in the developers' page and the index of codes. With `--validators` only what is not kept
// under version control, so that a check finds a schema that was not written anew.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { MODELS } from "../model/index.js";
import { renderCodeIndex } from "./code-index.js";
import { buildSchema, renderSchemas } from "./model-schemas.js";
import { placeRoomTable } from "./room-table.js";
import { generateValidator } from "./schema-validator.js";
import { shortenTexts } from "./shrink-schema.js";

/** The models that get a validator, the folder it goes to, and the function it exports. */
const VALIDATORS = [{ model: "policy", folder: "src/read/generated", exportName: "validatePolicy" }] as const;
const MAP_PAGE = "DEVELOPERS.md";

if (!process.argv.includes("--validators")) writeKeptFiles();
await writeValidators();

function writeKeptFiles(): void {
  for (const [file, text] of renderSchemas(MODELS)) writeWhenChanged(join("schemas", file), text);
  writeWhenChanged("docs/codes/README.md", renderCodeIndex());
  const page = readWhenThere(MAP_PAGE);
  if (page !== undefined) writeWhenChanged(MAP_PAGE, placeRoomTable(page));
}

async function writeValidators(): Promise<void> {
  for (const { model, folder, exportName } of VALIDATORS) {
    const schema = buildSchema(model, MODELS[model]);
    const validator = await generateValidator(schema, exportName);
    writeWhenChanged(join(folder, `${model}-schema.json`), `${JSON.stringify(shortenTexts(schema))}\n`);
    writeWhenChanged(join(folder, `${model}-validator.js`), validator.code);
    writeWhenChanged(join(folder, `${model}-validator.d.ts`), validator.declaration);
    writeWhenChanged(join(folder, `${model}-packages.json`), `${JSON.stringify(validator.packages)}\n`);
  }
}

/** Why: an untouched file keeps its time, so nothing that compares times starts over. */
function writeWhenChanged(file: string, text: string): void {
  if (readWhenThere(file) === text) return;
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  process.stdout.write(`wrote ${file}\n`);
}

function readWhenThere(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
