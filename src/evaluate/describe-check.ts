import type { Form, InstrumentPlan, Plan, StepPlan } from "../model/index.js";
import { type Dimension, parseQuantity, parseRecordTime } from "../quantities/index.js";
import type { JsonObject, JudgeContext, PreparedStep, StepField } from "../steps/index.js";
import { type AssessmentWords, ENGLISH_ASSESSMENTS, type LimitWords } from "../words/index.js";
import { describeAsked } from "./describe-limits.js";
import { joinFields } from "./join-fields.js";
import { isAsked, listLapsed, readOmissionState } from "./judge-adopted.js";
import { readFitting } from "./judge-step.js";
import { listStanding, type Standing } from "./list-standing.js";
import type { Policy } from "./policy.js";
import { type PreparedCheck, preparePolicy } from "./prepared-policy.js";
import { type Envelope, renameKind } from "./read-envelope.js";
import { createJudgeContext } from "./record-context.js";

/** What a form knows beside the subject, as a record would state it. */
export interface Circumstances {
  /** The day of the check, which decides whether an adoption applies; none does where it is left out. */
  readonly at?: string;
  readonly station?: string;
  readonly by?: JsonObject;
  readonly local?: JsonObject;
  /** The language of limits in words; English where none is given. */
  readonly words?: AssessmentWords | undefined;
}

/**
 * Describes a check as a form: its steps in order with questions, fields, units, limits in words, and what applies to this
 * subject. Undefined where the policy has no such check.
 *
 * @param subject the subject as a record would state it; what it leaves out stays open
 */
export function describeCheck(
  policy: Policy,
  check: string,
  subject: JsonObject = {},
  { words = ENGLISH_ASSESSMENTS, ...circumstances }: Circumstances = {},
): Form | undefined {
  const prepared = preparePolicy(policy.plan);
  const found = prepared.checks.get(check);
  if (found === undefined) return undefined;
  const envelope = renameKind(makeEnvelope(check, subject, circumstances), found.plan.subject, prepared.presentKinds);
  const context = createJudgeContext(prepared, envelope);
  const { id, version } = policy.plan.policy;
  const { title, competence, order } = found.plan;
  const kind = found.plan.subject?.kind;
  return {
    tenbar: 1,
    kind: "form",
    policy: { id, version, digest: policy.plan.digest },
    check: found.plan.check,
    ...(title === undefined ? {} : { title }),
    ...(kind === undefined ? {} : { subject: kind }),
    competence: [...(competence ?? [])],
    order,
    steps: found.steps.flatMap((step, place) =>
      isAsked(place, found, context)
        ? [describeStep(step, place, found, envelope, context, policy.plan, words.limits)]
        : [],
    ),
    cautions: [...policy.plan.cautions],
    deference: policy.plan.deference,
  };
}

/** Why: before any adoption can have begun, so that a form without a day shows the policy itself. */
const NO_DAY = "0001-01-01";

function makeEnvelope(
  check: string,
  subject: JsonObject,
  { at = NO_DAY, ...rest }: Omit<Circumstances, "words">,
): Envelope {
  const time = parseRecordTime(at) ?? parseRecordTime(NO_DAY);
  if (time === undefined) throw new Error("the first day of the calendar cannot be read");
  const textOf = (value: unknown) => (typeof value === "string" ? value : "");
  return {
    record: { ...rest, subject },
    id: "",
    check,
    time,
    subject,
    subjectKind: textOf(subject.kind),
    formerKind: undefined,
    subjectId: textOf(subject.id),
    steps: [],
  };
}

type FormStep = Form["steps"][number];

function describeStep(
  step: PreparedStep,
  place: number,
  check: PreparedCheck,
  envelope: Envelope,
  context: JudgeContext,
  plan: Plan,
  words: LimitWords,
): FormStep {
  const { plan: planned } = step;
  const asking = [step, ...listLapsed(place, check, context).map(({ adoption }) => adoption.otherwise)];
  const instrument = plan.instruments.find(({ name }) => name === planned.instrument);
  const applies = readApplies(asking, place, check, envelope, context);
  const isOmitted = readOmitted(place, check, envelope, context);
  // Why: a step that is left out as a whole still says what it would ask; of one that is asked, what is left out is not.
  const isWhole = applies.reason === "omitted-by-adoption";
  const isKept = ({ requirement }: Standing) => isWhole || !isOmitted(requirement.name);
  const defects = asking.flatMap(({ plan: one }) => (one.kind === "confirm" ? one.defects : []));
  return {
    step: planned.step,
    kind: planned.kind,
    ...(planned.ask === undefined ? {} : { ask: planned.ask }),
    ...applies,
    after: [...planned.after],
    attestable: asking.every(({ plan: one }) => one.kind === "confirm" && one.attestable),
    ...(instrument === undefined ? {} : { instrument: describeInstrument(instrument) }),
    defects: defects
      .filter(({ name }, index) => defects.findIndex((one) => one.name === name) === index)
      .map(({ name, title }) => ({ name, ...(title === undefined ? {} : { title }) })),
    fields: joinFields(asking.map((one) => one.plan)).map((field) => copyField(field, planned, instrument)),
    asked: describeAsked(step, listStanding(step, place, check, context).filter(isKept), context, words),
  };
}

/** Tells the requirements of a step that an adoption leaves out on the day. */
function readOmitted(
  place: number,
  check: PreparedCheck,
  envelope: Envelope,
  context: JudgeContext,
): (requirement: string) => boolean {
  const omissions = (check.adoptionsAt[place]?.omissions ?? []).filter(
    (one) => readOmissionState(one, check, envelope, context) === "applies",
  );
  return (name) => omissions.some(({ covers }) => covers(name));
}

/** Whether any step that stands on the day is asked of the subject: the policy's, or a parent's beside it. */
function readApplies(
  asking: readonly PreparedStep[],
  place: number,
  check: PreparedCheck,
  envelope: Envelope,
  context: JudgeContext,
): Pick<FormStep, "applies" | "reason"> {
  const isOmitted = readOmitted(place, check, envelope, context);
  const [own] = asking;
  const standing = own === undefined ? [] : listStanding(own, place, check, context);
  if (standing.every(({ requirement }) => isOmitted(requirement.name)))
    return { applies: "no", reason: "omitted-by-adoption" };
  const fittings = asking.map((one) => readFitting(one, envelope));
  if (fittings.includes("fitted")) return { applies: "yes" };
  const open = fittings.filter((fitting) => fitting !== "fitted" && fitting !== "not-fitted");
  const [reason] = open;
  return reason === undefined ? { applies: "no", reason: "not-fitted" } : { applies: "open", reason };
}

function copyField(
  field: StepField,
  step: StepPlan,
  instrument: InstrumentPlan | undefined,
): FormStep["fields"][number] {
  switch (field.type) {
    case "choice":
      return { ...field, words: [...field.words] };
    case "quantity":
      return { ...field, units: putFirst(findUsualUnit(field.quantity, step, instrument), field.units) };
    case "places":
      return { ...field, places: [...field.places] };
    case "events":
      return { ...field, events: [...field.events] };
    default:
      return { ...field };
  }
}

/** The unit of the limits that the step states, else that of its instrument. */
function findUsualUnit(
  dimension: Dimension,
  { requirements }: StepPlan,
  instrument: InstrumentPlan | undefined,
): string | undefined {
  const limits = requirements.flatMap(({ tolerance }) =>
    (tolerance?.bands ?? []).flatMap(({ accept }) => accept.map(({ limit }) => limit)),
  );
  for (const text of [...limits, instrument?.division, ...(instrument?.range ?? [])]) {
    const parsed = parseQuantity(text, dimension);
    if (parsed.ok) return parsed.quantity.unit.symbol;
  }
  return undefined;
}

function putFirst(first: string | undefined, units: readonly string[]): string[] {
  return first === undefined ? [...units] : [first, ...units.filter((unit) => unit !== first)];
}

function describeInstrument({ name, oneOf, division }: InstrumentPlan): NonNullable<FormStep["instrument"]> {
  return {
    name,
    ...(oneOf === undefined ? {} : { oneOf: [...oneOf] }),
    ...(division === undefined ? {} : { division }),
  };
}
