export type {
  AssessmentWords,
  FindingParams,
  FindingWords,
  LimitWords,
  ProblemCode,
  ProblemParams,
  RuleWords,
} from "./assessment-words.js";
export type { Catalogue } from "./catalogue.js";
export type {
  PlanLimitShapes,
  PlanShapes,
  PlanStepShapes,
  ReadShapeShapes,
  ReadTextShapes,
  ResolveShapes,
  RuleShapes,
} from "./diagnostic-shapes.js";
export type {
  DiagnosticCode,
  DiagnosticTexts,
  DiagnosticWords,
  HintWords,
  ParamsOf,
  ParentWords,
  PolicyTextWords,
  TextsByCode,
  ValueType,
} from "./diagnostic-words.js";
export { ENGLISH_ASSESSMENTS } from "./english-assessments.js";
export { ENGLISH_FILES } from "./english-files.js";
export { sayEnglishEvery } from "./english-spans.js";
export type { FileErrorCode, FileWords } from "./file-words.js";
export type { JsonWords, RecordInputWords, WantedInJson } from "./json-words.js";
export { listSpanParts, type SpanPart, type SpanUnit } from "./list-span-parts.js";
export type { PartOfPolicy } from "./part-of-policy.js";
export type { ArgumentWords, InputWords, ProgramWords, StartWords, StationWords } from "./program-words.js";
export type { QuantityFaultName, QuantityName } from "./quantity-name.js";
export { quoteQuantities } from "./quote-quantities.js";
export { type RemarkCode, type RemarkTexts, sayRemark } from "./remark-shapes.js";
export { rememberWords } from "./remember-words.js";
export type { BasisWords, ReportWords } from "./report-words.js";
export type { SharedParams } from "./says.js";
export type { SchemaText } from "./schema-texts.js";
export type { PlainThing, RuleThing, Thing } from "./thing.js";
export { joinWords, quoteWords } from "./word-list.js";
export { writeVariable } from "./write-variable.js";
