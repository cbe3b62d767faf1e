import { readFileSync } from "node:fs";
import { compilePolicy } from "../../src/index.js";
import { POLICY_TEXT } from "../cli/sample-policy.js";
import { CASES, MORE, SOUND } from "../compile/meaning-cases.js";
import { SHAPE_MISTAKES } from "../read/shape-mistakes.js";
import { TEXT_MISTAKES } from "../read/text-mistakes.js";

const TUTORIAL = readFileSync("docs/first-five-minutes/tune-a-policy.md", "utf8");
const PARENT = "common-practice/open-circuit";

/** Every mistaken policy of the other tests and of the tutorial, by a name. */
export const MISTAKEN_POLICIES: readonly (readonly [name: string, text: string])[] = [
  ...[...CASES, ...MORE].map(([from, to, code]) => [`${code} ${to.trim()}`, SOUND.replace(from, () => to)] as const),
  ...SHAPE_MISTAKES.map(([what, text]) => [what, text] as const),
  ...TEXT_MISTAKES.map(([what, text]) => [what, text] as const),
  ...[...TUTORIAL.matchAll(/```yaml mistaken\n([\s\S]*?)```/g)].map(
    ([, text = ""], index) => [`mistake ${index + 1} of the tutorial`, text] as const,
  ),
];

/** Policies that have none. */
export const SOUND_POLICIES: readonly (readonly [name: string, text: string])[] = [
  ["sound", SOUND],
  ["leak only", POLICY_TEXT],
  [PARENT, readFileSync(`policies/${PARENT}.yaml`, "utf8")],
];

export function diagnose(text: string, file = "lowmere.yaml") {
  const parents = { [PARENT]: readFileSync(`policies/${PARENT}.yaml`, "utf8") };
  return compilePolicy(text, { file, parents }).diagnostics;
}
