import { type DiagnosticTexts, type PlanStepShapes, quoteWords } from "../words/index.js";
import { wantOneOf } from "./german-lists.js";
import { nameThing } from "./german-things.js";

/** Checks and steps. */
export const GERMAN_PLAN_STEP_TEXTS = {
  "plan/bad-span": {
    message: ({ found }) => `\`${found}\` ist keine Kalenderspanne`,
    wanted: () => "eine Spanne nach ISO 8601 aus Jahren, Monaten, Wochen oder Tagen, etwa `P30D`, `P6M` oder `P5Y`",
  },
  "plan/duplicate-step": {
    message: ({ step }) => `die Prüfung hat noch einen Schritt namens \`${step}\``,
    mend: () => "einem von ihnen einen anderen Namen geben",
  },
  "plan/no-steps": {
    message: ({ check }) => `die Prüfung \`${check}\` hat keine Schritte`,
  },
  "plan/no-order": {
    message: ({ check }) => `die Prüfung \`${check}\` gibt nicht an, ob die Reihenfolge ihrer Schritte zählt`,
    wanted: () => "`order: any`, `order: { listed-by: position }` oder `order: { listed-by: at }`",
  },
  "plan/step-before-itself": {
    message: ({ steps, key }) =>
      key === undefined
        ? `ein Schritt müsste vor sich selbst kommen: ${quoteWords(steps)}`
        : `ein Schritt kann nicht ${key === "before" ? "vor" : "hinter"} sich selbst stehen: ${quoteWords(steps)}`,
    mend: ({ key }) =>
      key === undefined
        ? "einen Namen aus `after` herausnehmen"
        : `in \`${key}\` einen anderen Schritt nennen oder es herausnehmen`,
  },
  "plan/after-later-step": {
    message: ({ step, after }) => `\`${step}\` soll nach \`${after}\` kommen, das dahinter aufgeführt ist`,
    mend: ({ after, step }) => `\`${after}\` vor \`${step}\` aufführen oder \`order: any\` angeben`,
  },
  "plan/apart-without-each": {
    message: () => "`apart` vergleicht die Einträge einer Liste; der Schritt gilt nicht für jeden einzeln",
    mend: () => "`each: subject.cylinders` ergänzen oder `apart` herausnehmen",
  },
  "plan/needs-one-of": {
    message: ({ keys, given }) =>
      given.length === 0
        ? `keines von ${quoteWords(keys)} ist angegeben`
        : `${quoteWords(given)} stehen zusammen; nur eines davon darf es sein`,
    wanted: ({ keys }) => wantOneOf(keys),
    mend: ({ given }) => (given.length === 0 ? undefined : "eines davon behalten"),
  },
  "plan/nothing-to-compare": {
    message: () => "zu einer einzigen Stelle gibt es nichts zu vergleichen",
    mend: () => "weitere Stellen, `equals` oder `differs-from` ergänzen",
  },
  "plan/duplicate-name": {
    message: ({ thing, name }) => `zweimal genannt: ${nameThing(thing)} \`${name}\``,
    mend: () => "eines davon herausnehmen oder ihm einen anderen Namen geben",
  },
  "plan/mild-defect": {
    message: ({ defect, consequence }) =>
      `der Mangel \`${defect}\` hat nur die Folge \`${consequence}\`: ein Protokoll mit ihm kann die Richtlinie trotzdem erfüllen`,
    mend: () => "dem Mangel die Folge `refer` oder eine strengere geben, wenn das nicht gemeint ist",
  },
} satisfies Pick<DiagnosticTexts, keyof PlanStepShapes>;
