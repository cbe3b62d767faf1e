/** One fault put into one source file: the stretch that is replaced, which stands there exactly once, and what replaces it. */
export interface Fault {
  readonly name: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
}

const fault = (name: string, file: string, from: string, to: string): Fault => ({ name, file, from, to });

export const FAULTS: readonly Fault[] = [
  fault(
    "at-most takes the next quantum too",
    "src/quantities/band.ts",
    'kind === "at-most" ? floorRational(threshold)',
    'kind === "at-most" ? ceilRational(threshold) + 1n',
  ),
  fault(
    "at-least leaves its limit out",
    "src/quantities/band.ts",
    'kind === "at-least" ? ceilRational(threshold)',
    'kind === "at-least" ? floorRational(threshold) + 1n',
  ),
  fault(
    "below takes its limit in",
    "src/quantities/band.ts",
    ": ceilRational(threshold) - 1n",
    ": floorRational(threshold)",
  ),
  fault("outside is within", "src/steps/prepared-tolerance.ts", 'return "outside";', 'return "within";'),
  fault("caution is outside", "src/steps/prepared-tolerance.ts", 'return "caution";', 'return "outside";'),
  fault(
    "a drop is a rise",
    "src/steps/judge-change.ts",
    'change.name === "rise" ? signed : change.name === "drop" ? -signed',
    'change.name === "rise" ? -signed : change.name === "drop" ? signed',
  ),
  fault(
    "units are not looked at in a drop",
    "src/steps/judge-change.ts",
    "end.quantity.unit.family !== unit.family",
    "end.quantity.unit.family === undefined",
  ),
  fault(
    "a range has no upper end",
    "src/steps/judge-quantity.ts",
    "quantity.quanta < low || quantity.quanta > high",
    "quantity.quanta < low",
  ),
  fault(
    "another instrument is as good",
    "src/steps/judge-quantity.ts",
    'return "instrument-unknown";',
    "return undefined;",
  ),
  fault("a gap weighs nothing", "src/steps/row.ts", "Math.min(REFER, failure)", "0"),
  fault(
    "not-done weighs what the step does",
    "src/evaluate/judge-step.ts",
    "row.leastWeight = REFER;",
    "row.leastWeight = 0;",
  ),
  fault(
    "a defect beside satisfactory is lost",
    "src/steps/confirm-step.ts",
    '!isMissing(defect) || result === "defect"',
    'result === "defect"',
  ),
  fault(
    "an unnamed defect weighs what the step does",
    "src/steps/confirm-step.ts",
    "if (named === undefined) row.leastWeight = REFER;",
    "if (named === undefined) row.leastWeight = 0;",
  ),
  fault(
    "missing is satisfactory",
    "src/steps/confirm-step.ts",
    'if (isMissing(result)) return makeRow(condition, "undecided", "missing");',
    'if (isMissing(result)) return makeRow(condition, "within");',
  ),
  fault(
    "entries that differ are one",
    "src/evaluate/judge-step.ts",
    'if (differ) withholdDecision(worst, "conflicting");',
    "",
  ),
  fault(
    "what is not recorded as fitted is not fitted",
    "src/evaluate/judge-step.ts",
    '? "fitting-not-recorded" : "unreadable"',
    '? "not-fitted" : "unreadable"',
  ),
  fault(
    "the order is turned round",
    "src/evaluate/judge-order.ts",
    "entry.listed < previous.listed",
    "entry.listed > previous.listed",
  ),
  fault(
    "nothing judged is enough",
    "src/evaluate/judge-record.ts",
    "if (!isAnythingJudged(judgement) && ",
    "if (judgement.rows.length < 0 && ",
  ),
  fault(
    "a short hold proves something",
    "src/steps/hold-step.ts",
    'if (isNotWithin(lastingRow)) withholdDecision(changeRow, "hold-too-short");',
    "",
  ),
  fault(
    "an empty set proves something",
    "src/steps/hold-step.ts",
    'if (isNotWithin(startRow)) withholdDecision(changeRow, "start-too-low");',
    "",
  ),
  fault(
    "a rise counts as no drop",
    "src/steps/judge-change.ts",
    "const backwards = moved < 0 && ",
    "const backwards = moved > 1e99 && ",
  ),
  fault(
    "places may differ",
    "src/steps/match-step.ts",
    "const outside = differ || notEqual || notOther;",
    "const outside = notEqual || notOther;",
  ),
  fault(
    "a place may be left out",
    "src/steps/match-step.ts",
    'if (read.length === 0) reason = firstReason(reason, "missing");',
    'if (read.length === -1) reason = firstReason(reason, "missing");',
  ),
  fault(
    "a date of tomorrow is good",
    "src/steps/in-date-step.ts",
    "compareDates(on, context.recordDate) === 1",
    "compareDates(on, context.recordDate) === 2",
  ),
  fault(
    "the last day is too late",
    "src/steps/in-date-step.ts",
    "compareDates(due, context.recordDate) === -1",
    "compareDates(due, context.recordDate) !== 1",
  ),
  fault("another competence will do", "src/evaluate/judge-record.ts", 'accepted ? "within" : "outside"', '"within"'),
  fault(
    "a member without a reading is passed over",
    "src/evaluate/judge-step.ts",
    'if (isMissing(entry.of)) return members.length === 1 ? undefined : "missing";',
    "if (isMissing(entry.of)) return undefined;",
  ),
  fault(
    "an adoption never ends",
    "src/evaluate/adoption-state.ts",
    'if (until !== undefined && isAfter(context.recordDate, until)) return "does-not-apply";',
    "",
  ),
  fault(
    "an adoption of unknown scope applies",
    "src/evaluate/judge-adopted.ts",
    "return [certain, ...contested.map(put), ...open.map(put)];",
    "return [[...certain, ...open], ...contested.map(put)];",
  ),
  fault(
    "a covering adoption never lapses",
    "src/evaluate/cover-rows.ts",
    'if (state === "does-not-apply") return worst(other, one);',
    'if (state === "does-not-apply") return one;',
  ),
  fault(
    "a step that only the parent asks is never asked again",
    "src/compare/cover-departures.ts",
    "  adoptions.push({ ...standingOf(covering), step: step.step });",
    "  adoptions.push({ ...standingOf(covering), step: step.step, until: undefined });",
  ),
  fault(
    "an interval is left out whatever the day",
    "src/evaluate/cover-rows.ts",
    'if (state === "does-not-apply" || !covers(one.row.requirement.name)) return one;',
    "if (!covers(one.row.requirement.name)) return one;",
  ),
  fault(
    "of two orders with limits on one requirement the first decides",
    "src/evaluate/judge-adopted.ts",
    "return [certain, ...contested.map(put), ...open.map(put)];",
    "return [certain, ...open.map(put)];",
  ),
  fault(
    "a renewed order is undone by the one before it",
    "src/evaluate/adoption-state.ts",
    "return ranked.find((one) => topicOf(one.adoption, requirement) === topic)?.adoption === adoption;",
    "return ranked.length > 0;",
  ),
  fault(
    "what rests on a lapsed order goes on",
    "src/evaluate/cover-rows.ts",
    "return isRestored ? worst(one, other) : one;",
    "return one;",
  ),
  fault(
    "a defect weighs what a lapsed order made of it",
    "src/evaluate/judge-adopted.ts",
    "const standing = [...(check.steps[place]?.requirements ?? []), ...lapsed];",
    "const standing = [...(check.steps[place]?.requirements ?? []), ...lapsed.slice(0, 0)];",
  ),
  fault(
    "words are remembered whatever the value",
    "src/steps/word-memory.ts",
    "for (const number of key) shelf = findShelf(shelf.next, number);",
    "for (const _ of key) shelf = findShelf(shelf.next, 0);",
  ),
  fault(
    "a missing fact gives the first case",
    "src/steps/prepared-tolerance.ts",
    "else if (state !== false) open = firstReason(open, state);",
    "else if (state !== false) chosen ??= source;",
  ),
  fault(
    "a margin has the other sign",
    "src/quantities/band.ts",
    "isLower ? subtractRational(value, limit) : subtractRational(limit, value)",
    "isLower ? subtractRational(limit, value) : subtractRational(value, limit)",
  ),
  fault("a psi is a little more", "src/quantities/units.ts", "8896443230521n", "8896443230522n"),
  fault("a doubt is forgotten once a value is outside", "src/steps/judge-quantity.ts", "  row.doubt = doubt;\n", ""),
  fault(
    "a contradiction is as mild as its mildest defect",
    "src/evaluate/judge-step.ts",
    "differ ? weighGap(worst, context) : 0",
    "0",
  ),
  fault(
    "one entry stands for all in apart",
    "src/steps/apart.ts",
    "level.candidates.length === 0 ? [level] : level.candidates",
    "[level]",
  ),
];
