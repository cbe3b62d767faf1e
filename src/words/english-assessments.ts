import type { AssessmentWords } from "./assessment-words.js";
import { ENGLISH_FINDINGS, ENGLISH_REASONS } from "./english-findings.js";
import { ENGLISH_LIMITS, ENGLISH_OPEN_ENDS, ENGLISH_PROBLEMS, ENGLISH_RULES } from "./english-limits.js";
import { ENGLISH_REMARKS } from "./english-remarks.js";

/** What assessments and forms say where no other language is asked for. */
export const ENGLISH_ASSESSMENTS: AssessmentWords = {
  reasons: ENGLISH_REASONS,
  limits: ENGLISH_LIMITS,
  rules: ENGLISH_RULES,
  findings: ENGLISH_FINDINGS,
  remarks: ENGLISH_REMARKS,
  openEnds: ENGLISH_OPEN_ENDS,
  problems: ENGLISH_PROBLEMS,
};
