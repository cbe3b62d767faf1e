import type { Diagnostics } from "../diagnostics/index.js";
import type { PolicyDocument } from "../model/index.js";
import type { ParsedPolicy } from "../read/index.js";
import { findNearest } from "../terms/index.js";
import type { Thing } from "../words/index.js";
import type { Origins } from "./origins.js";
import type { ResolvedPolicy } from "./resolved-policy.js";

type Checks = NonNullable<PolicyDocument["checks"]>;
type PolicyCheck = Checks[string];
type PolicyStep = NonNullable<PolicyCheck["steps"]>[number];

interface MergedChecks {
  readonly checks: Checks;
  readonly removedSteps: readonly string[];
}

/** Checks merge key by key; their steps by name and place. `without` takes parent's checks and steps away. */
export function mergeChecks(
  parent: ResolvedPolicy,
  parsed: ParsedPolicy,
  origins: Origins,
  diagnostics: Diagnostics,
): MergedChecks {
  const inherited = new Map(Object.entries(parent.document.checks ?? {}));
  const removedSteps: string[] = [];
  const removed = parsed.document.without ?? [];
  reportUnknown("check of the parent", removed, [...inherited.keys()], "/without", parsed, diagnostics);
  for (const name of removed) {
    for (const { step } of inherited.get(name)?.steps ?? []) removedSteps.push(`${name}/${step}`);
    inherited.delete(name);
  }
  const merged = new Map<string, PolicyCheck>();
  for (const [name, check] of inherited) {
    merged.set(name, check);
    origins.fromParent(`/checks/${name}`, `/checks/${name}`);
  }
  for (const [name, check] of Object.entries(parsed.document.checks ?? {})) {
    const pointer = `/checks/${name}`;
    const parentCheck = inherited.get(name);
    origins.fromChild(pointer, pointer);
    const steps = mergeSteps(parentCheck?.steps ?? [], check, pointer, parsed, origins, diagnostics);
    removedSteps.push(...(check.without ?? []).map((step) => `${name}/${step}`));
    merged.set(name, { ...takeKeys(parentCheck, check, pointer, origins), ...(steps.length === 0 ? {} : { steps }) });
  }
  return { checks: Object.fromEntries(merged), removedSteps };
}

/** Every key but the steps: the child's, else the parent's. */
function takeKeys(
  parent: PolicyCheck | undefined,
  child: PolicyCheck,
  pointer: string,
  origins: Origins,
): Omit<PolicyCheck, "steps" | "without"> {
  const { steps: _steps, without: _without, ...own } = child;
  if (parent === undefined) return own;
  const { steps: _inherited, ...rest } = parent;
  for (const key of Object.keys(rest)) {
    if (!Object.hasOwn(own, key)) origins.fromParent(`${pointer}/${key}`, `${pointer}/${key}`);
  }
  return { ...rest, ...own };
}

interface PlacedStep {
  readonly step: PolicyStep;
  readonly index: number;
  readonly isOwn: boolean;
}

function mergeSteps(
  inherited: readonly PolicyStep[],
  check: PolicyCheck,
  pointer: string,
  parsed: ParsedPolicy,
  origins: Origins,
  diagnostics: Diagnostics,
): PolicyStep[] {
  const removed = check.without ?? [];
  const names = inherited.map(({ step }) => step);
  reportUnknown("step of the parent", removed, names, `${pointer}/without`, parsed, diagnostics);
  const list: PlacedStep[] = inherited
    .map((step, index) => ({ step: withoutAfter(step, removed), index, isOwn: false }))
    .filter(({ step }) => !removed.includes(step.step));
  for (const [index, step] of (check.steps ?? []).entries()) {
    putStep({ step, index, isOwn: true }, list, `${pointer}/steps/${index}`, parsed, diagnostics);
  }
  list.forEach(({ index, isOwn }, position) => {
    const at = `${pointer}/steps/${position}`;
    if (isOwn) origins.fromChild(at, `${pointer}/steps/${index}`);
    else origins.fromParent(at, `${pointer}/steps/${index}`);
  });
  return list.map(({ step }) => step);
}

/** A step that is inherited no longer comes after what is taken away. */
function withoutAfter(step: PolicyStep, removed: readonly string[]): PolicyStep {
  if (step.after?.some((name) => removed.includes(name)) !== true) return step;
  const { after, ...rest } = step;
  const kept = after.filter((name) => !removed.includes(name));
  return kept.length === 0 ? rest : { ...rest, after: kept };
}

/** A step of the parent's name takes its place, a new one goes last, unless it says `before` or `behind`. */
function putStep(
  placed: PlacedStep,
  list: PlacedStep[],
  pointer: string,
  parsed: ParsedPolicy,
  diagnostics: Diagnostics,
): void {
  const { before, behind, step: name } = placed.step;
  const old = list.findIndex(({ step, isOwn }) => step.step === name && !isOwn);
  const anchor = before ?? behind;
  if (before !== undefined && behind !== undefined) {
    const params = { keys: ["before", "behind"], given: ["before", "behind"] };
    diagnostics.report("plan/needs-one-of", parsed.place(`${pointer}/behind`, "key"), params);
  }
  if (anchor === undefined) {
    if (old === -1) list.push(placed);
    else list[old] = placed;
    return;
  }
  if (old !== -1) list.splice(old, 1);
  const names = list.map(({ step }) => step.step);
  const at = names.indexOf(anchor);
  const key = before === undefined ? "behind" : "before";
  if (anchor === name) {
    diagnostics.report("plan/step-before-itself", parsed.place(`${pointer}/${key}`), { steps: [name], key });
    list.splice(old === -1 ? list.length : old, 0, placed);
    return;
  }
  reportUnknown("step to stand beside", [anchor], names, `${pointer}/${key}`, parsed, diagnostics);
  if (at === -1) list.push(placed);
  else list.splice(before === undefined ? at + 1 : at, 0, placed);
}

function reportUnknown(
  thing: Thing,
  names: readonly string[],
  known: readonly string[],
  pointer: string,
  parsed: ParsedPolicy,
  diagnostics: Diagnostics,
): void {
  names.forEach((name, index) => {
    if (known.includes(name)) return;
    const place = parsed.place(names.length > 1 || pointer.endsWith("without") ? `${pointer}/${index}` : pointer);
    diagnostics.report("plan/unknown-name", place, { thing, name, known, nearest: findNearest(name, known) });
  });
}
