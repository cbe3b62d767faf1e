import type { DiagnosticWords } from "../words/index.js";
import { GERMAN_LIMITS } from "./german-limits.js";
import { GERMAN_PLAN_LIMIT_TEXTS } from "./german-plan-limit-texts.js";
import { GERMAN_PLAN_STEP_TEXTS } from "./german-plan-step-texts.js";
import { GERMAN_PLAN_TEXTS } from "./german-plan-texts.js";
import { GERMAN_PARENTS, GERMAN_POLICY_TEXT, GERMAN_RELATED, sayPartOfPolicy } from "./german-policy-text.js";
import { GERMAN_READ_SHAPE_TEXTS } from "./german-read-shape-texts.js";
import { GERMAN_READ_TEXT_TEXTS } from "./german-read-text-texts.js";
import { GERMAN_RESOLVE_TEXTS } from "./german-resolve-texts.js";
import { GERMAN_RULE_TEXTS } from "./german-rule-texts.js";

export const GERMAN_DIAGNOSTICS: DiagnosticWords = {
  diagnostics: {
    ...GERMAN_READ_TEXT_TEXTS,
    ...GERMAN_READ_SHAPE_TEXTS,
    ...GERMAN_RESOLVE_TEXTS,
    ...GERMAN_PLAN_TEXTS,
    ...GERMAN_PLAN_LIMIT_TEXTS,
    ...GERMAN_PLAN_STEP_TEXTS,
    ...GERMAN_RULE_TEXTS,
  },
  policyText: GERMAN_POLICY_TEXT,
  limits: GERMAN_LIMITS,
  partOfPolicy: sayPartOfPolicy,
  parents: GERMAN_PARENTS,
  related: GERMAN_RELATED,
};
