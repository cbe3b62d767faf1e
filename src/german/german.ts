import type { Catalogue } from "../words/index.js";
import { GERMAN_ASSESSMENTS } from "./german-assessments.js";
import { GERMAN_DIAGNOSTICS } from "./german-diagnostics.js";
import { GERMAN_FILES } from "./german-files.js";
import { GERMAN_PROGRAM } from "./german-program.js";
import { GERMAN_REPORTS } from "./german-reports.js";

/** All that the library says, in German. */
export const german: Catalogue = {
  language: "de",
  ...GERMAN_ASSESSMENTS,
  ...GERMAN_DIAGNOSTICS,
  ...GERMAN_REPORTS,
  files: GERMAN_FILES,
  program: GERMAN_PROGRAM,
};
