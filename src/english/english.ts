import { type Catalogue, ENGLISH_ASSESSMENTS, ENGLISH_FILES } from "../words/index.js";
import { ENGLISH_DIAGNOSTICS } from "./english-diagnostics.js";
import { ENGLISH_PROGRAM } from "./english-program.js";
import { ENGLISH_REPORTS } from "./english-reports.js";

export const english: Catalogue = {
  language: "en",
  ...ENGLISH_ASSESSMENTS,
  ...ENGLISH_DIAGNOSTICS,
  ...ENGLISH_REPORTS,
  files: ENGLISH_FILES,
  program: ENGLISH_PROGRAM,
};
