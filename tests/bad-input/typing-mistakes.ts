import { readFileSync } from "node:fs";

/** Sound policies that mistakes are planted in: the shipped one, Lowmere's child of it, and the one that the language page explains. */
export const SOUND = {
  shipped: readFileSync("policies/common-practice/open-circuit.yaml", "utf8"),
  child: readFileSync("examples/lowmere/policy.yaml", "utf8"),
  local: /```yaml policy\n([\s\S]*?)```/.exec(readFileSync("docs/language.md", "utf8"))?.[1] ?? "",
} as const;

export interface Slip {
  readonly text: keyof typeof SOUND;
  /** The stretch that is spoilt; its first occurrence counts. */
  readonly from: string;
  /** What is typed instead; `«` stands where the diagnostic is wanted and is no part of it. */
  readonly to: string;
  readonly code: string;
  readonly found?: string;
  readonly nearest?: string;
  readonly mend?: string;
}

/** A step of a check with its keys, as it stands in a policy. */
function takeStep(text: string, name: string): string {
  const step = new RegExp(`^( +)- step: ${name}\\n(?:\\1  .*\\n)+`, "m").exec(text)?.[0];
  if (step === undefined) throw new Error(`the policy has no step ${name}`);
  return step;
}

function copyStep(text: keyof typeof SOUND, name: string): Slip {
  const from = takeStep(SOUND[text], name);
  return { text, from, to: from + from.replace(`step: ${name}`, `step: «${name}`), code: "plan/duplicate-step" };
}

/** An adoption of Lowmere without the line that says how long it holds. */
function takeEnd(id: string, line: string): Slip {
  const from = new RegExp(`id: ${id}\\n[^]*?${line}\\n`).exec(SOUND.child)?.[0];
  if (from === undefined) throw new Error(`no adoption ${id} has ${line}`);
  const to = from.replace(`    ${line}\n`, "").replace(id, `«${id}`);
  return { text: "child", from, to, code: "plan/adoption-without-end", mend: "`until`" };
}

const KEY = "read/unknown-key";
const TWICE = "read/duplicate-key";
const QUANTITY = "plan/bad-quantity";
const TEXT = "read/bad-text";
const NAME = "plan/unknown-name";
const CUT = "read/text-cut-by-comma";
const STRAY = "read/stray-quote";
const PLAIN = "read/unquoted-text";
const ITSELF = "plan/step-before-itself";

/** Seventeen mistakes of typing, each at several places. */
export const MISTAKES: Readonly<Record<string, readonly Slip[]>> = {
  "a key is misspelt": [
    { text: "child", from: "accept: { at-least: 270", to: "«acept: { at-least: 270", code: KEY, nearest: "accept" },
    { text: "child", from: "when-fitted: spare", to: "«when-fited: spare", code: KEY, nearest: "when-fitted" },
    { text: "child", from: "{ from: 2026-04-01", to: "{ «form: 2026-04-01", code: KEY, nearest: "from" },
    { text: "local", from: "rounding: down", to: "«ruonding: down", code: KEY, nearest: "rounding" },
    { text: "shipped", from: "deference:", to: "«defrence:", code: KEY, nearest: "deference" },
  ],
  "the hyphen before an entry of a list is left out": [
    { text: "shipped", from: "      - step: torch\n", to: "        «step: torch\n", code: TWICE, mend: "`- step:`" },
    {
      text: "shipped",
      from: "      - step: whistle\n",
      to: "        «step: whistle\n",
      code: TWICE,
      mend: "`- step:`",
    },
    { text: "child", from: "  - rule: spare-sets", to: "    «rule: spare-sets", code: TWICE, mend: "`- rule:`" },
    { text: "child", from: "  - id: masts-2026\n", to: "    «id: masts-2026\n", code: TWICE, mend: "`- id:`" },
  ],
  "a unit is that of something else": [
    { text: "child", from: "270 bar", to: "«270 s", code: QUANTITY, found: "270 s" },
    { text: "child", from: "at-most: 3 s", to: "at-most: «3 bar", code: QUANTITY, found: "3 bar" },
    { text: "child", from: "5.8 m }", to: "«5.8 bar }", code: QUANTITY, found: "5.8 bar" },
    { text: "local", from: "division: 1 bar", to: "division: «1 s", code: QUANTITY, found: "1 s" },
  ],
  "the space before a unit is missing": [
    { text: "child", from: "270 bar", to: "«270bar", code: QUANTITY, mend: "`270 bar`" },
    { text: "child", from: "60 bar]", to: "«60bar]", code: QUANTITY, mend: "`60 bar`" },
    { text: "child", from: "90 % of rated", to: "«90% of rated", code: QUANTITY, mend: "`90 % of rated-pressure`" },
    {
      text: "local",
      from: "apart: { at-most: 20 bar",
      to: "apart: { at-most: «20bar",
      code: QUANTITY,
      mend: "`20 bar`",
    },
    { text: "local", from: "max-error: 4 bar", to: "max-error: «4bar", code: QUANTITY, mend: "`4 bar`" },
  ],
  "the decimal mark is a comma": [
    { text: "child", from: "at-most: 3 s", to: "at-most: «3,5 s", code: TEXT, found: "3,5 s", nearest: "3.5 s" },
    { text: "child", from: "[55 bar, 60 bar]", to: "«[55,5 bar, 60 bar]", code: TEXT, nearest: "[55.5 bar, 60 bar]" },
    { text: "local", from: "[0 bar, 350 bar]", to: "«[0 bar, 350,5 bar]", code: TEXT, nearest: "[0 bar, 350.5 bar]" },
    { text: "shipped", from: "plus-minus: 5 bar", to: "plus-minus: «5,5 bar", code: TEXT, nearest: "5.5 bar" },
    {
      text: "child",
      from: "accept: { at-least: 270 bar }",
      to: "accept:\n      at-least: «5,5 mbar",
      code: QUANTITY,
      found: "5,5 mbar",
      mend: "`5.5 mbar`",
    },
  ],
  "a line is indented with a tab": [
    { text: "child", from: "        behind: charge", to: "«\t\t\t\tbehind: charge", code: "read/tab-indent" },
    { text: "child", from: "        behind: harness", to: "      «\tbehind: harness", code: "read/tab-indent" },
    { text: "child", from: "  - rule: spare", to: "«\t- rule: spare", code: "read/tab-indent" },
    { text: "shipped", from: "  Local procedure,", to: "«\tLocal procedure,", code: "read/tab-indent" },
  ],
  "a tolerance is named that is not there": [
    { text: "child", from: "tolerance: spare-cyl", to: "tolerance: «spare-cly", code: NAME, nearest: "spare-cylinder" },
    { text: "shipped", from: "drop: leak-drop", to: "drop: «leak-dorp", code: NAME, nearest: "leak-drop" },
    { text: "shipped", from: "tolerance: telem", to: "tolerance: «tleem", code: NAME, nearest: "telemetry-time" },
    { text: "child", from: "tolerance: charge", to: "tolerance: «chrage", code: NAME, nearest: "charge" },
  ],
  "the bounds of a band are swapped": [
    {
      text: "child",
      from: "[55 bar, 60 bar]",
      to: "«[60 bar, 55 bar]",
      code: "plan/swapped-bounds",
      mend: "[55 bar, 60 bar]",
    },
    {
      text: "shipped",
      from: "[1.2 m, 1.25 m]",
      to: "«[1.25 m, 1.2 m]",
      code: "plan/swapped-bounds",
      mend: "[1.2 m, 1.25 m]",
    },
    { text: "shipped", from: "[25 s, 35 s]", to: "«[35 s, 25 s]", code: "plan/swapped-bounds", mend: "[25 s, 35 s]" },
    { text: "local", from: "[0 bar, 350 bar]", to: "«[350 bar, 0 bar]", code: "plan/swapped-bounds" },
  ],
  "a step stands twice": [
    copyStep("child", "duress-whistle"),
    copyStep("child", "voice-check"),
    copyStep("shipped", "harness"),
    copyStep("shipped", "leak"),
    copyStep("local", "charge"),
  ],
  "a date is none": [
    { text: "child", from: "until: 2026-05-29", to: "until: «2026-05-32", code: "plan/bad-date", found: "2026-05-32" },
    { text: "child", from: "from: 2026-05-04", to: "from: «2026-5-4", code: TEXT, found: "2026-5-4" },
    { text: "child", from: "2027-02-01 }", to: "«2027-02-30 }", code: "plan/bad-date", found: "2027-02-30" },
    { text: "local", from: "until: 2026-05-29", to: "until: «29.05.2026", code: TEXT, found: "29.05.2026" },
  ],
  "a quote is never closed": [
    { text: "child", from: '"2026.2"', to: '«"2026.2', code: "read/unclosed-quote" },
    { text: "child", from: '"LO 7"', to: '«"LO 7', code: "read/unclosed-quote" },
    { text: "child", from: '"TO 26/11"', to: '«"TO 26/11', code: "read/unclosed-quote" },
    { text: "local", from: '"49 CFR 180.209"', to: "«'49 CFR 180.209", code: "read/unclosed-quote" },
  ],
  "a quote is closed that was never opened": [
    { text: "child", from: "at-most: 3 s", to: 'at-most: 3 s«"', code: STRAY, found: '3 s"', mend: "`3 s`" },
    { text: "shipped", from: "at-most: 10 bar", to: 'at-most: 10 bar«"', code: STRAY, mend: "`10 bar`" },
    { text: "child", from: "60 bar]", to: "60 bar«']", code: STRAY, found: "60 bar'", mend: "`60 bar`" },
    { text: "child", from: '"LO 12" }', to: 'LO 12«" }', code: STRAY, found: 'LO 12"', mend: '`"LO 12"`' },
    { text: "child", from: '"LO 7"', to: 'LO 7«"', code: STRAY, found: 'LO 7"', mend: '`"LO 7"`' },
    { text: "child", from: '"2026.2"', to: '2026.2«"', code: STRAY, found: '2026.2"', mend: '`"2026.2"`' },
    { text: "child", from: "attestable: true", to: 'attestable: true«"', code: STRAY, mend: "`true`" },
    { text: "child", from: "tolerance: charge", to: 'tolerance: charge«"', code: STRAY, mend: "`charge`" },
    { text: "local", from: "rounding: down", to: 'rounding: down«"', code: STRAY, mend: "`down`" },
    { text: "shipped", from: "as it should be?", to: 'as it should be?«"', code: STRAY, mend: "should be?" },
    { text: "child", from: "{ at-least: 270 bar }", to: '{ at-least: 270 bar }«"', code: STRAY, mend: "delete" },
    { text: "child", from: "60 bar]", to: '60 bar]«"', code: STRAY, mend: "delete" },
    { text: "child", from: '"LO 7"', to: '"LO 7"«"', code: STRAY, mend: "delete" },
  ],
  "a comma in braces cuts a text in two": [
    { text: "child", from: '"LO 12" }', to: 'LO 12, «page 3" }', code: CUT, mend: '`order: "LO 12, page 3"`' },
    { text: "child", from: '"LO 12" }', to: "LO 12, «page 3 }", code: CUT, found: "page 3", mend: '"LO 12, page 3"' },
    {
      text: "shipped",
      from: "No fall that",
      to: "No fall, «that",
      code: CUT,
      mend: '"No fall, that the gauge shows."',
    },
    {
      text: "shipped",
      from: "or cut,",
      to: "at an edge, «cut or burnt,",
      code: CUT,
      mend: 'title: "Strap frayed at an edge, cut',
    },
  ],
  "an order number is not in quotes": [
    { text: "child", from: '"LO 7"', to: "«007", code: PLAIN, mend: '`"007"`' },
    { text: "child", from: '"TO 26/11"', to: "«2611", code: PLAIN, mend: '`"2611"`' },
    { text: "local", from: '"LO 14"', to: "«014", code: PLAIN, mend: '`"014"`' },
    { text: "child", from: '"2026.2"', to: "«2026.2", code: PLAIN, mend: '`"2026.2"`' },
  ],
  "a comparison sign is pasted": [
    { text: "child", from: "at-most: 3 s", to: "at-most: «≤ 3 s", code: QUANTITY, mend: "`at-most: 3 s`" },
    { text: "shipped", from: "at-most: 10 bar", to: "«≤ 10 bar", code: TEXT, nearest: "at-most: 10 bar" },
    {
      text: "local",
      from: "{ at-least: 80 %",
      to: "{ «≥ 80 %",
      code: TEXT,
      nearest: "at-least: 80 % of rated-pressure",
    },
    {
      text: "child",
      from: "{ at-least: 270 bar }",
      to: "«≥ 270 bar",
      code: "read/wrong-type",
      mend: "{ at-least: 270 bar }",
    },
  ],
  "a step is to come before itself": [
    { text: "child", from: "attestable: true", to: "after: [«duress-whistle]\n        attestable: true", code: ITSELF },
    { text: "shipped", from: "after: [charge]", to: "after: [«leak]", code: ITSELF },
    { text: "shipped", from: "after: [pre-alarm]", to: "after: [«pre-alarm-cancelled]", code: ITSELF },
    { text: "local", from: "each: subject", to: "after: [«charge]\n        each: subject", code: ITSELF },
    { text: "child", from: "behind: harness", to: "before: «duress-whistle", code: "plan/step-before-itself" },
    { text: "local", from: "attestable: true", to: "«before: harness", code: "resolve/needs-parent" },
  ],
  "an adoption has no end": [
    takeEnd("charge-by-role", "review: 2027-02-01"),
    takeEnd("shorter-lines", "review: 2027-02-01"),
    takeEnd("masts-2026", "until: 2026-05-29"),
  ],
};
