import { compareDates } from "../quantities/index.js";
import {
  isJsonObject,
  isMissing,
  type JsonObject,
  type JudgeContext,
  makeNotApplicable,
  makeRow,
  type Row,
  readMember,
} from "../steps/index.js";
import { listActing } from "./adoption-state.js";
import { type AskedRow, coverRows, omitRows } from "./cover-rows.js";
import type { PreparedDue, PreparedInterval } from "./prepared-policy.js";
import type { Envelope } from "./read-envelope.js";

/** One thing that falls due, with its place in the record. */
interface DueThing {
  readonly object: JsonObject;
  readonly pointer: string;
  readonly part: string | undefined;
  readonly member: number;
}

/** Judges one interval that the check names, with the adoptions that name it. */
export function judgeDue(due: PreparedDue, envelope: Envelope, context: JudgeContext): readonly Row[] {
  const judge = (interval: PreparedInterval): readonly AskedRow[] =>
    judgeInterval(interval, envelope, context).map((row) => ({ row, step: undefined }));
  let asked = judge(due);
  const acting = listActing(due.adoptions, ({ departure }) => departure, context);
  for (const { adoption, state, covers } of acting) {
    const { plan, otherwise } = adoption;
    if (otherwise !== undefined) asked = coverRows(asked, judge(otherwise), plan, state, covers, context.gapsAsOutside);
  }
  // Why: what an order leaves out is left out whichever limit would stand.
  for (const { adoption, state, covers } of acting) {
    if (adoption.otherwise === undefined) asked = omitRows(asked, adoption.plan, state, covers);
  }
  return asked.map(({ row }) => row);
}

/**
 * Judges one interval at the record's own date: in time up to and including the due date. The subject
 * itself falls due where its kind is that of the interval, else each member of its list (`cylinder`: `subject.cylinders`).
 */
function judgeInterval(interval: PreparedInterval, envelope: Envelope, context: JudgeContext): Row[] {
  const { plan, requirement } = interval;
  const scope = plan.for === undefined ? true : context.scopeState(plan.for);
  if (scope === false) return [makeNotApplicable(requirement, "out-of-scope")];
  const things = findThings(plan.of, envelope);
  if (things.length === 0) return [makeRow(requirement, "undecided", scope === true ? "no-date" : scope)];
  return things.map((thing) => {
    const row = judgeThing(interval, thing, context);
    if (scope !== true && row.outcome !== "outside") {
      row.outcome = "undecided";
      row.undecidedFor = scope;
    }
    return row;
  });
}

function findThings(of: string, { subject, subjectKind, formerKind }: Envelope): readonly DueThing[] {
  if (subjectKind.trim() === of || formerKind === of)
    return [{ object: subject, pointer: "/subject", part: undefined, member: -1 }];
  const key = `${of}s`;
  const list = readMember(subject, key);
  if (!Array.isArray(list)) return [];
  // Why: a hole in a list is no thing that can be passed over, as `map` would.
  return Array.from(list, (member: unknown, index) => {
    const object = isJsonObject(member) ? member : {};
    const id = typeof object.id === "string" && object.id.trim() !== "" ? object.id.trim() : `#${index + 1}`;
    return { object, pointer: `/subject/${key}/${index}`, part: id, member: index };
  });
}

function judgeThing({ plan, requirement, readDue }: PreparedInterval, thing: DueThing, context: JudgeContext): Row {
  const text = readMember(thing.object, plan.date);
  const read = readDue(text);
  const row = makeRow(requirement, "within");
  row.part = thing.part;
  row.member = thing.member;
  row.pointer = `${thing.pointer}/${plan.date}`;
  const undecided = (reason: "no-date" | "unreadable" | "date-ahead"): Row => {
    row.outcome = "undecided";
    row.undecidedFor = reason;
    return row;
  };
  if (isMissing(text)) return undecided("no-date");
  if (read === undefined) return undecided("unreadable");
  const { on, due, dueText } = read;
  if (compareDates(on, context.recordDate) === 1) return undecided("date-ahead");
  // Why: a due date beyond the year 9999 cannot have passed.
  if (due !== undefined && compareDates(due, context.recordDate) === -1) row.outcome = "outside";
  row.details = {
    date: String(text),
    every: plan.every,
    ...(dueText === undefined ? {} : { due: dueText }),
    ...(plan.forbids === undefined ? {} : { forbids: plan.forbids }),
  };
  return row;
}
