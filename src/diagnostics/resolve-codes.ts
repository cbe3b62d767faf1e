import { defineCode } from "./define-code.js";
import { quoteWords } from "./word-list.js";

/** Codes of what a policy inherits. */
export const RESOLVE_CODES = {
  "resolve/bad-parent": defineCode<{ parent: string; why: string }>({
    severity: "error",
    message: ({ parent, why }) => `\`${parent}\` cannot be a parent: ${why}`,
    wanted: () => "a shipped policy such as `common-practice/open-circuit@1`, or a file such as `./brigade.yaml`",
  }),
  "resolve/no-parent": defineCode<{ parent: string; why: string }>({
    severity: "error",
    message: ({ parent, why }) => `the parent \`${parent}\` cannot be had: ${why}`,
  }),
  "resolve/circle": defineCode<{ policies: readonly string[] }>({
    severity: "error",
    message: ({ policies }) =>
      `policies extend each other in a circle, or too many times over: ${quoteWords(policies)}`,
    mend: () => "take one `extends` out",
  }),
  "resolve/unpinned-parent": defineCode<{ parent: string; major: string }>({
    severity: "warning",
    message: ({ parent }) => `\`${parent}\` is not pinned: a later release may change this policy`,
    mend: ({ parent, major }) => `write \`${parent}@${major}\``,
  }),
  "resolve/other-major": defineCode<{ parent: string; version: string; major: string }>({
    severity: "error",
    message: ({ parent, version }) => `\`${parent}\` names another major version than ${version}, which is here`,
    mend: ({ parent, major }) => `read what changed, then write \`${parent.replace(/@.*/, "")}@${major}\``,
  }),
  "resolve/needs-parent": defineCode<{ key: string }>({
    severity: "error",
    message: ({ key }) => `\`${key}\` speaks of a parent, and the policy extends none`,
    mend: ({ key }) => `take \`${key}\` out, or add \`extends\``,
  }),
  "resolve/parent-alone": defineCode({
    severity: "warning",
    message: () => "the parent is no complete policy by itself, so nothing could be compared with it",
  }),
  "resolve/looser": defineCode<{ what: string; here: string; parent: string }>({
    severity: "warning",
    message: ({ what, here, parent }) => `${what} is looser than the parent's: here ${here}, there ${parent}`,
    mend: () => "tighten it, or adopt the departure under an order in `adopted`",
  }),
  "resolve/cannot-compare": defineCode<{ what: string; here: string; parent: string }>({
    severity: "warning",
    message: ({ what, here, parent }) =>
      `${what} cannot be compared with the parent's: here ${here}, there ${parent}; it may be looser`,
    mend: () => "check it by hand, and adopt the departure under an order in `adopted`",
  }),
};
