import type { AssessmentWords } from "../words/index.js";
import { GERMAN_FINDINGS, GERMAN_REASONS } from "./german-findings.js";
import { GERMAN_LIMITS, GERMAN_OPEN_ENDS, GERMAN_PROBLEMS, GERMAN_RULES } from "./german-limits.js";
import { GERMAN_REMARKS } from "./german-remarks.js";

export const GERMAN_ASSESSMENTS: AssessmentWords = {
  reasons: GERMAN_REASONS,
  limits: GERMAN_LIMITS,
  rules: GERMAN_RULES,
  findings: GERMAN_FINDINGS,
  remarks: GERMAN_REMARKS,
  openEnds: GERMAN_OPEN_ENDS,
  problems: GERMAN_PROBLEMS,
};
