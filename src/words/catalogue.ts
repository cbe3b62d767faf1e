import type { AssessmentWords } from "./assessment-words.js";
import type { DiagnosticWords } from "./diagnostic-words.js";
import type { FileWords } from "./file-words.js";
import type { ProgramWords } from "./program-words.js";
import type { ReportWords } from "./report-words.js";

/**
 * All that the library says, in one language.
 *
 * Texts are lower case at their start and have no final stop; words of an author stand in backticks. Codes, fingerprints, figures
 * and the policy's own words never depend on a catalogue.
 */
export interface Catalogue extends AssessmentWords, DiagnosticWords, ReportWords {
  /** The language as BCP 47 names it, `en`. */
  readonly language: string;
  readonly files: FileWords;
  readonly program: ProgramWords;
}
