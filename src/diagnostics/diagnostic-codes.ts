import type { DiagnosticDefinition } from "./define-code.js";
import { PLAN_CODES } from "./plan-codes.js";
import { READ_CODES } from "./read-codes.js";
import { RESOLVE_CODES } from "./resolve-codes.js";
import { RULE_CODES } from "./rule-codes.js";

const REGISTRY = { ...READ_CODES, ...RESOLVE_CODES, ...PLAN_CODES, ...RULE_CODES };

/** A stable word for one kind of mistake, `room/kebab-words`. */
export type DiagnosticCode = keyof typeof REGISTRY;

type ParamsByCode = { readonly [C in DiagnosticCode]: Parameters<(typeof REGISTRY)[C]["message"]>[0] };

/** What must be given to report a code. */
export type ParamsOf<C extends DiagnosticCode> = ParamsByCode[C];

/** Every code with its texts. */
export const DIAGNOSTICS: { readonly [C in DiagnosticCode]: DiagnosticDefinition<ParamsByCode[C]> } = REGISTRY;
