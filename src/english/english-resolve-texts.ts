import { type DiagnosticTexts, type ParamsOf, quoteWords, type ResolveShapes } from "../words/index.js";
import { wantOneOf } from "./english-lists.js";

/** What a policy inherits. */
export const ENGLISH_RESOLVE_TEXTS = {
  "resolve/bad-parent": {
    message: ({ parent, why }) => `\`${parent}\` cannot be a parent: ${why}`,
    wanted: () => "a shipped policy such as `common-practice/open-circuit@1`, or a file such as `./brigade.yaml`",
  },
  "resolve/no-parent": {
    message: ({ parent, why }) => `the parent \`${parent}\` cannot be had: ${why}`,
    mend: ({ nearest }) => (nearest === undefined ? undefined : `write \`${nearest}\``),
  },
  "resolve/circle": {
    message: ({ policies }) =>
      `policies extend each other in a circle, or too many times over: ${quoteWords(policies)}`,
    mend: () => "take one `extends` out",
  },
  "resolve/unpinned-parent": {
    message: ({ parent }) => `\`${parent}\` is not pinned: a later release may change this policy`,
    mend: ({ parent, major }) => `write \`${parent}@${major}\``,
  },
  "resolve/other-major": {
    message: ({ parent, version }) => `\`${parent}\` names another major version than ${version}, which is here`,
    mend: ({ parent, major }) => `read what changed, then write \`${parent.replace(/@.*/, "")}@${major}\``,
  },
  "resolve/needs-parent": {
    message: ({ key }) => `\`${key}\` speaks of a parent, and the policy extends none`,
    mend: ({ key }) => `take \`${key}\` out, or add \`extends\``,
  },
  "resolve/near-name": {
    message: ({ thing, name, nearest }) =>
      `the ${thing} \`${name}\` is new; the parent's \`${nearest ?? ""}\` stays as it is`,
    mend: ({ nearest }) => `write \`${nearest ?? ""}\` to change the parent's; else choose a name that differs more`,
  },
  "resolve/parent-alone": {
    message: () => "the parent is no complete policy by itself, so nothing could be compared with it",
  },
  "resolve/looser": {
    message: ({ what, ...sides }) => `${what} is looser than the parent's: ${saySides(sides)}`,
    mend: () => "tighten it, or adopt the departure under an order in `adopted`",
  },
  "resolve/adoption-does-not-fit": {
    message: ({ adoption, step, known }) =>
      known.length === 0
        ? `the inherited adoption \`${adoption}\` has limits for \`${step}\`, which has no requirement with limits here`
        : `the inherited adoption \`${adoption}\` has limits for \`${step}\`; which requirement of this step they are for is not clear`,
    wanted: ({ known }) => (known.length === 0 ? "a requirement with limits" : wantOneOf(known)),
    mend: ({ adoption, known }) =>
      known.length === 0
        ? `state \`${adoption}\` again under \`adopted\` here, for what this step asks; or leave the step as the parent has it`
        : `state \`${adoption}\` again under \`adopted\` here, with \`requirement\`; or leave the step as the parent has it`,
  },
  "resolve/asked-only-instead": {
    message: ({ step, adoption }) =>
      `the parent asks \`${step}\` of every record; here it is asked only while \`${adoption}\` applies`,
    mend: () => "state a step of this policy's own, and name that as `instead`",
  },
  "resolve/covers-nothing": {
    message: ({ adoption }) =>
      `the adoption \`${adoption}\` covers nothing: no part that it names is looser than the parent's`,
    mend: () => "take it out; or write the departure in it, as `accept`, `instead` or `omit`",
  },
  "resolve/cannot-compare": {
    message: ({ what, ...sides }) =>
      `${what} cannot be compared with the parent's: ${saySides(sides)}; it may be looser`,
    mend: () => "check it by hand, and adopt the departure under an order in `adopted`",
  },
} satisfies Pick<DiagnosticTexts, keyof ResolveShapes>;

type Sides = Pick<ParamsOf<"resolve/looser">, "here" | "parent" | "limit" | "parentLimit">;

function saySides({ here, parent, limit, parentLimit }: Sides): string {
  const say = (text: string | undefined, spot: string) => (text === undefined ? spot : `${text} (${spot})`);
  return `here ${say(limit, here)}, there ${say(parentLimit, parent)}`;
}
