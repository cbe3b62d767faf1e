import type { DiagnosticCode, ParamsOf } from "../../src/diagnostics/index.js";
import { OUTCOMES, REQUIREMENTS, UNDECIDED_REASONS } from "../../src/terms/index.js";
import type { Catalogue, FindingParams, PartOfPolicy, TextsByCode } from "../../src/words/index.js";
import { DIAGNOSTIC_SAMPLES, type DiagnosticSamples } from "./diagnostic-samples.js";

/** Texts by the place in the catalogue that says them. */
export type SaidTexts = ReadonlyMap<string, string>;

/** All that a catalogue can say, with params whose values are words and numbers that no sentence has of its own. */
export function sayEverything(words: Catalogue): SaidTexts {
  return new Map([
    ...sayPlainTexts(words, ""),
    ...sayFindings(words),
    ...sayRemarks(words),
    ...sayLimits(words),
    ...sayFiles(words),
    ...sayProgram(words),
    ...sayReports(words),
    ...sayPolicyTexts(words),
    ...Object.keys(DIAGNOSTIC_SAMPLES).flatMap((code) =>
      isCode(code) ? sayCode(words.diagnostics, DIAGNOSTIC_SAMPLES, code) : [],
    ),
  ]);
}

type Said = readonly (readonly [string, string])[];

const isCode = (code: string): code is DiagnosticCode => Object.hasOwn(DIAGNOSTIC_SAMPLES, code);

/** Every text that stands in the catalogue as it is. */
function sayPlainTexts(part: object, base: string): Said {
  return Object.entries(part).flatMap(([key, value]: [string, unknown]): Said => {
    const path = base === "" ? key : `${base} ${key}`;
    if (typeof value === "string") return [[path, value]];
    return typeof value === "object" && value !== null ? sayPlainTexts(value, path) : [];
  });
}

function sayCode<C extends DiagnosticCode>(texts: TextsByCode, samples: DiagnosticSamples, code: C): Said {
  const list: readonly ParamsOf<C>[] = samples[code];
  return list.flatMap((params, index) => {
    const { message, wanted, mend } = texts[code];
    const parts = { message: message(params), wanted: wanted?.(params), mend: mend?.(params) };
    return Object.entries(parts).flatMap(
      ([part, text]): Said => (text === undefined ? [] : [[`${code} ${index} ${part}`, text]]),
    );
  });
}

const FINDING: FindingParams = {
  outcome: "outside",
  observed: "p-observed",
  accept: "p-accept",
  never: false,
  quantity: "pressure",
  defect: "p-defect",
  late: "p-late",
  early: "p-early",
  forbids: "fill",
};
const BARE: FindingParams = {
  ...FINDING,
  outcome: "caution",
  observed: undefined,
  quantity: undefined,
  defect: undefined,
  forbids: "use",
};

function sayFindings({ findings }: Catalogue): Said {
  return REQUIREMENTS.flatMap((name) => [
    [`findings ${name} outside`, findings.decided[name](FINDING)],
    [`findings ${name} caution`, findings.decided[name](BARE)],
    [`findings ${name} never`, findings.decided[name]({ ...FINDING, never: true })],
    [`findings ${name} undecided`, findings.undecided(name, undefined, "p-observed")],
    ...UNDECIDED_REASONS.map(
      (reason) => [`findings ${name} ${reason}`, findings.undecided(name, reason, undefined)] as const,
    ),
  ]);
}

const REMARK = {
  ...{ check: "p-check", fact: "p-fact", found: "p-found", scope: "check", date: "p-date", from: "p-from", to: "p-to" },
  ...{
    key: "p-key",
    nearest: "p-nearest",
    step: "p-step",
    defect: "p-defect",
    recorded: "p-recorded",
    fitting: "p-fitting",
  },
  ...{ adoption: "p-adoption", order: "p-order", until: "p-until", without: "within", place: "p-place" },
  ...{ observed: "p-observed", accept: "p-accept", confidence: "0.71" },
};

function sayRemarks({ remarks, problems }: Catalogue): Said {
  return [
    ...Object.entries(remarks).map(([code, say]) => [code, say(REMARK)] as const),
    ...OUTCOMES.map((without) => [`step/adopted ${without}`, remarks["step/adopted"]({ ...REMARK, without })] as const),
    ["record/scope-unknown policy", remarks["record/scope-unknown"]({ ...REMARK, scope: "policy" })],
    ...Object.entries(problems).map(
      ([code, say]) => [`problems ${code}`, say({ key: "p-key", count: 7003, most: 7002 })] as const,
    ),
  ];
}

function sayLimits({ limits, rules }: Catalogue): Said {
  const { signs, lists } = rules;
  return [
    ...Object.entries(limits.bounds).map(([kind, say]) => [`limits ${kind}`, say("p-limit")] as const),
    ["limits range", limits.range(["p-low", "p-high"])],
    ["limits all", limits.all(["p-one", "p-two"])],
    ["limits share", limits.share("p-value", "p-share", "p-fact")],
    ["limits equalTo", limits.equalTo("p-text")],
    ["limits otherThan", limits.otherThan("p-text")],
    ["limits notOlder", limits.notOlder("p-span")],
    ["limits every", limits.every("p-span")],
    ["limits goodTo", limits.goodTo("p-date")],
    ["limits anyOf", limits.anyOf(["p-one", "p-two"])],
    ...Object.entries(signs).map(
      ([sign, said]) => [`rules ${sign}`, rules.compare("p-left", said.join(), "p-right")] as const,
    ),
    ["rules not", rules.not("p-term")],
    ["rules choose", rules.choose("p-value", "p-condition", "p-otherwise")],
    ["rules equal", rules.equal("p-left", "p-right")],
    ["rules unequal", rules.unequal("p-left", "p-right")],
    ["rules least", rules.least("p-terms")],
    ["rules greatest", rules.greatest("p-terms")],
    ["rules size", rules.size("p-term")],
    ["rules oneOf", rules.oneOf("p-item", "p-list")],
    ...Object.entries(lists).map(([kind, say]) => [`rules ${kind}`, say("p-list", "p-holds")] as const),
  ];
}

function sayFiles({ files }: Catalogue): Said {
  return [
    ["files tooLarge", files.tooLarge(7001)],
    ["files wouldReplace", files.wouldReplace("p-file")],
    ["files planUnreadable", files.planUnreadable("p-why")],
    ["json commaOr", files.json.commaOr("p-closing")],
    ["json unwanted", files.json.unwanted("p-found", "p-wanted")],
    ["json commaBefore", files.json.commaBefore("p-closing")],
    ["json badEscape", files.json.badEscape("p-sequence")],
    ["json tooDeep", files.json.tooDeep(7001)],
    ["json repeatedKey", files.json.repeatedKey("p-key")],
    ["records lineTooLong", files.records.lineTooLong(7001)],
  ];
}

function sayProgram({ program }: Catalogue): Said {
  const { start, arguments: args, inputs, stations } = program;
  const known = ["p-one", "p-two"];
  return [
    ...[undefined, "p-nearest"].flatMap(
      (nearest): Said => [
        [`program noCommand ${nearest}`, start.noCommand("p-word", nearest)],
        [`program noOption ${nearest}`, start.noOption("p-word", nearest)],
        [`program noneOf ${nearest}`, args.noneOf("p-given", known, nearest)],
        [`program noCheck ${nearest}`, args.noCheck("p-check", known, nearest)],
        [`program unknown ${nearest}`, stations.unknown("p-station", known, nearest)],
      ],
    ),
    ["program moreHelp", start.moreHelp("p-command")],
    ["program twice", args.twice("p-option")],
    ["program noValue", args.noValue("p-option")],
    ["program needs", args.needs("p-option", "p-value")],
    ["program needsJoined", args.needsJoined("p-option", "p-value", "p-given")],
    ["program noDay", args.noDay("p-given")],
    ["program noTime", args.noTime("p-given")],
    ["program missing", args.missing("p-name", "p-usage")],
    ["program surplus", args.surplus("p-word", "p-usage")],
    ["program notJudged", inputs.notJudged("p-problem")],
    ["program noRecord", inputs.noRecord("p-why")],
    ["program holdNone of one", inputs.holdNone(["p-one"])],
    ["program holdNone", inputs.holdNone(known)],
    ["program planNotSaved", program.planNotSaved("p-why")],
    ["program reportNotWritten", program.reportNotWritten("p-why")],
    ["program ownFault", program.ownFault("p-message")],
  ];
}

function sayReports({ report, basis, listing, resolved }: Catalogue): Said {
  const counts = { within: 7001, caution: 7002, outside: 7003, undecided: 7004, notApplicable: 7005 };
  return [
    ["report cannotBeJudged", report.cannotBeJudged("p-message", "p-pointer")],
    ["report cannotBeJudged at all", report.cannotBeJudged("p-message", "")],
    ["report counts", report.counts(counts)],
    ["report interval", report.interval("p-name")],
    ["report rule", report.rule("p-name")],
    ["report beyond", report.beyond("p-margin")],
    ["report inside", report.inside("p-margin")],
    ["report between", report.between("p-from", "p-to", "p-chance")],
    ["report chance", report.chance(71)],
    ["report policy", report.policy("p-id", "p-version", "p-title", "p-digest")],
    ["basis published", basis.published(["p-one", "p-two"])],
    ["basis localOrder", basis.localOrder("p-order")],
    ["listing wanted", listing.wanted("p-text")],
    ["listing mend", listing.mend("p-text")],
    ["listing seeAlso", listing.seeAlso("p-spot", "p-why")],
    ["listing counts", listing.counts(7001, 7002)],
    ["listing counts of one", listing.counts(1, 1)],
    ["resolved upTo", resolved.upTo("p-fact", "p-limit")],
    ["resolved interval", resolved.interval("p-name", "p-span")],
    ["resolved rule", resolved.rule("p-name")],
    ["resolved adopted", resolved.adopted("p-id", "p-step", "p-from", "p-until", "p-order")],
    ["resolved adopted for good", resolved.adopted("p-id", "p-step", "p-from", undefined, "p-order")],
  ];
}

const STEP = { name: "p-step" } as const;
const REQUIREMENT = { name: "p-step", requirement: "p-requirement" } as const;
const OF = { of: "p-check" } as const;
const PARTS: { readonly [K in PartOfPolicy["kind"]]: Extract<PartOfPolicy, { kind: K }> | PartOfPolicy } = {
  "policy-scope": { kind: "policy-scope" },
  gaps: { kind: "gaps" },
  fact: { kind: "fact", name: "p-fact" },
  instrument: { kind: "instrument", name: "p-instrument" },
  "check-left-out": { kind: "check-left-out", ...OF },
  scope: { kind: "scope", ...OF },
  subject: { kind: "subject", ...OF },
  "former-names": { kind: "former-names", ...OF },
  competence: { kind: "competence", ...OF },
  order: { kind: "order", ...OF },
  unanchored: { kind: "unanchored", ...OF },
  step: { kind: "step", ...STEP },
  "step-left-out": { kind: "step-left-out", ...STEP },
  "step-added": { kind: "step-added", ...STEP },
  "requirement-left-out": { kind: "requirement-left-out", ...REQUIREMENT },
  "requirement-added": { kind: "requirement-added", ...REQUIREMENT },
  consequence: { kind: "consequence", ...REQUIREMENT },
  limit: { kind: "limit", ...REQUIREMENT },
  interval: { kind: "interval", name: "p-name", ...OF },
  rule: { kind: "rule", name: "p-name", ...OF },
};

function sayPolicyTexts({ policyText, partOfPolicy }: Catalogue): Said {
  const { hints } = policyText;
  return [
    ["policyText suchAs", policyText.suchAs("p-sentence", "p-example")],
    ["policyText oneOf", policyText.oneOf(["p-one", "p-two", "p-three"])],
    ["policyText membersWithPoints", policyText.membersWithPoints(7001)],
    ["policyText member", policyText.member(7001, "p-list")],
    ["hints writeThis", hints.writeThis("p-text")],
    ["hints unitBehind", hints.unitBehind("p-example")],
    ["hints withoutQuotes", hints.withoutQuotes("p-value")],
    ["hints asList", hints.asList("p-value")],
    ["hints writtenLike", hints.writtenLike("p-example")],
    ...Object.values(PARTS).map((part) => [`part ${part.kind}`, partOfPolicy(part)] as const),
  ];
}
