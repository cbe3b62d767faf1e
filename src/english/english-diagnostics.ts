import { type DiagnosticWords, ENGLISH_ASSESSMENTS } from "../words/index.js";
import { ENGLISH_PLAN_LIMIT_TEXTS } from "./english-plan-limit-texts.js";
import { ENGLISH_PLAN_STEP_TEXTS } from "./english-plan-step-texts.js";
import { ENGLISH_PLAN_TEXTS } from "./english-plan-texts.js";
import { ENGLISH_PARENTS, ENGLISH_POLICY_TEXT, ENGLISH_RELATED, sayPartOfPolicy } from "./english-policy-text.js";
import { ENGLISH_READ_SHAPE_TEXTS } from "./english-read-shape-texts.js";
import { ENGLISH_READ_TEXT_TEXTS } from "./english-read-text-texts.js";
import { ENGLISH_RESOLVE_TEXTS } from "./english-resolve-texts.js";
import { ENGLISH_RULE_TEXTS } from "./english-rule-texts.js";

/** What diagnostics say where no other language is asked for. */
export const ENGLISH_DIAGNOSTICS: DiagnosticWords = {
  diagnostics: {
    ...ENGLISH_READ_TEXT_TEXTS,
    ...ENGLISH_READ_SHAPE_TEXTS,
    ...ENGLISH_RESOLVE_TEXTS,
    ...ENGLISH_PLAN_TEXTS,
    ...ENGLISH_PLAN_LIMIT_TEXTS,
    ...ENGLISH_PLAN_STEP_TEXTS,
    ...ENGLISH_RULE_TEXTS,
  },
  policyText: ENGLISH_POLICY_TEXT,
  limits: ENGLISH_ASSESSMENTS.limits,
  partOfPolicy: sayPartOfPolicy,
  parents: ENGLISH_PARENTS,
  related: ENGLISH_RELATED,
};
