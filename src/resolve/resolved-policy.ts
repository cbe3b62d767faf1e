import type { PolicyDocument } from "../model/index.js";
import type { Place } from "../source/index.js";

/** A policy that stands on its own: what it inherits is in it, and every part knows the text that states it. */
export interface ResolvedPolicy {
  readonly document: PolicyDocument;
  /** The policy that it extends, resolved in the same way. */
  readonly parent: ResolvedPolicy | undefined;
  /** Steps that an ancestor has and this policy does not, as `check/step`. */
  readonly removedSteps: readonly string[];
  /** The place of a JSON Pointer of `document` in the text that states it; an unknown pointer gives its nearest ancestor. */
  place(pointer: string, part?: "key" | "value"): Place;
  /** Whether what stands at a JSON Pointer of `document` is stated by an ancestor, in another text than the policy's own. */
  isInherited(pointer: string): boolean;
}
