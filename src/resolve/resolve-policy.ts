import type { Diagnostics } from "../diagnostics/index.js";
import { type ParsedPolicy, readPolicy } from "../read/index.js";
import { findNearest } from "../terms/index.js";
import { type FindParent, readReference } from "./find-parent.js";
import { mergePolicy } from "./merge-policy.js";
import { refuseNotYet } from "./refuse-not-yet.js";
import { refuseWithoutParent } from "./refuse-without-parent.js";
import type { ResolvedPolicy } from "./resolved-policy.js";

/** A chain of parents longer than this is a mistake. */
const MOST_ANCESTORS = 16;

/** Resolves a parsed policy with its parents; what this version does not judge is refused by name, so that nothing is ignored. */
export function resolvePolicy(
  parsed: ParsedPolicy,
  diagnostics: Diagnostics,
  findParent: FindParent,
  ancestors: readonly string[] = [parsed.source.file],
): ResolvedPolicy | undefined {
  if (refuseNotYet(parsed, diagnostics)) return undefined;
  const reference = parsed.document.extends;
  if (reference === undefined) {
    if (refuseWithoutParent(parsed, diagnostics)) return undefined;
    return {
      document: parsed.document,
      parent: undefined,
      removedSteps: [],
      place: (pointer, part) => parsed.place(pointer, part),
      isInherited: () => false,
    };
  }
  const parent = loadParent(reference, parsed, diagnostics, findParent, ancestors);
  return parent === undefined ? undefined : mergePolicy(parent, parsed, diagnostics);
}

function loadParent(
  reference: string,
  parsed: ParsedPolicy,
  diagnostics: Diagnostics,
  findParent: FindParent,
  ancestors: readonly string[],
): ResolvedPolicy | undefined {
  const place = parsed.place("/extends");
  const read = readReference(reference);
  if (read.kind === "fault") {
    diagnostics.report("resolve/bad-parent", place, { parent: reference, why: diagnostics.words.parents[read.why] });
    return undefined;
  }
  const found = findParent(reference, parsed.source.file);
  if ("problem" in found) {
    const nearest = findNearParent(reference, found.known ?? []);
    diagnostics.report("resolve/no-parent", place, { parent: reference, why: found.problem, nearest });
    return undefined;
  }
  const { file } = found.source;
  if (ancestors.includes(file) || ancestors.length >= MOST_ANCESTORS) {
    diagnostics.report("resolve/circle", place, { policies: [...ancestors, file] });
    return undefined;
  }
  const document = readPolicy(found.source, diagnostics);
  const resolved =
    document === undefined ? undefined : resolvePolicy(document, diagnostics, findParent, [...ancestors, file]);
  if (resolved !== undefined && read.kind === "shipped") checkPin(reference, read.major, resolved, parsed, diagnostics);
  return resolved;
}

/** The parent that was probably meant, with the major version that is written. */
function findNearParent(reference: string, known: readonly string[]): string | undefined {
  const [name = "", pin] = reference.split("@");
  const nearest = findNearest(
    name,
    known.map((one) => one.replace(/@.*/, "")),
  );
  return nearest === undefined || pin === undefined ? nearest : `${nearest}@${pin}`;
}

/** A shipped parent is pinned to its major version, so that a new release never changes a local policy in silence. */
function checkPin(
  reference: string,
  major: string | undefined,
  parent: ResolvedPolicy,
  parsed: ParsedPolicy,
  diagnostics: Diagnostics,
): void {
  const { version } = parent.document.policy;
  const [current = ""] = version.split(".");
  const place = parsed.place("/extends");
  if (major === undefined) {
    if (parsed.document.policy.status === "local") {
      diagnostics.report("resolve/unpinned-parent", place, { parent: reference, major: current });
    }
  } else if (major !== current) {
    diagnostics.report("resolve/other-major", place, { parent: reference, version, major: current });
  }
}
