import { type Picks, pickFrom } from "../generators/picks.js";
import { isMap } from "../laws/evidence-path.js";
import type { Data } from "../laws/generated-step.js";
import { type Change, CONSEQUENCES, changeStep, changeSteps, setOfStep } from "./change.js";

const basis = { kind: "common-practice" };
const charge = { kind: "reading", quantity: "pressure", tolerance: { accept: { "at-least": "200 bar" } }, basis };

/** Steps that a child may add, among them some that the parent may have. */
function makeExtraStep(picks: Picks): Data {
  const weights = { consequence: pickFrom(CONSEQUENCES, picks), "when-fitted": pickFrom([undefined, "alarm"], picks) };
  const each = pickFrom([undefined, "subject.cylinders"], picks);
  const steps: readonly Data[] = [
    { step: "torch", kind: "confirm", attestable: pickFrom([true, undefined], picks), each },
    { step: "torch", kind: "confirm", defects: { torn: { consequence: pickFrom(["note", "withdraw"], picks) } } },
    { step: "torch", kind: "confirm", formerly: ["old-name", "stranger"] },
    { step: "harness", kind: "confirm" },
    { step: "charge", ...charge, each },
    { step: "number", kind: "match", places: ["back", "mask"] },
    { step: "monthly", kind: "in-date", within: "P1M", basis },
    { step: "torch", ...charge },
  ];
  return { ...pickFrom(steps, picks), ...weights };
}

const addStep: Change = changeSteps((steps, picks) => {
  const extra = makeExtraStep(picks);
  if (steps.some(({ step }) => step === extra.step)) return undefined;
  return picks.next() % 2 === 0 ? [...steps, extra] : [extra, ...steps];
});

/** A step that others come after goes with what they say of it. */
const removeStep: Change = changeSteps((steps, picks) => {
  const lost = pickFrom(steps, picks)?.step;
  return steps
    .filter(({ step }) => step !== lost)
    .map((step) => {
      if (!Array.isArray(step.after)) return step;
      const after = step.after.filter((name: unknown) => name !== lost);
      return { ...step, after: after.length === 0 ? undefined : after };
    });
});

const turnSteps: Change = changeSteps((steps, picks) => {
  const cut = picks.next() % Math.max(1, steps.length);
  return [...steps.slice(cut), ...steps.slice(0, cut)];
});

const changeAfter: Change = changeSteps((steps, picks) => {
  const index = picks.next() % Math.max(1, steps.length);
  const before = steps.slice(0, index).map(({ step }) => step);
  const own = steps[index];
  const wanted = pickFrom(before, picks);
  const after = own?.after === undefined && wanted !== undefined ? [wanted] : undefined;
  return steps.map((step) => (step === own ? { ...step, after } : step));
});

const exchangeKind: Change = changeStep((step, picks) => {
  const { step: name, consequence, after, "when-fitted": whenFitted } = step;
  const kinds: readonly Data[] = [
    { kind: "confirm" },
    charge,
    { kind: "match", places: ["back", "mask"] },
    { kind: "in-date", "not-past": true, basis },
  ];
  return { step: name, consequence, after, "when-fitted": whenFitted, ...pickFrom(kinds, picks) };
});

const switchEach: Change = changeStep((step) => {
  const each = step.each === undefined ? "subject.cylinders" : undefined;
  return { ...step, each, apart: each === undefined ? undefined : step.apart };
});

const changeApart: Change = changeStep((step, picks) => {
  if (step.kind !== "reading" || step.each === undefined) return undefined;
  const apart = pickFrom([{ "at-most": "10 bar" }, { "at-most": "8 % of rated-pressure" }], picks);
  return { ...step, apart: step.apart === undefined ? apart : undefined };
});

const changeHold = (key: "start" | "lasting"): Change =>
  changeStep((step, picks) => {
    if (step.kind !== "hold") return undefined;
    const limits = key === "start" ? ["250 bar", "90 % of rated-pressure"] : ["60 s", "90 s"];
    const limit = { "at-least": pickFrom(limits, picks), consequence: pickFrom(CONSEQUENCES, picks) };
    return { ...step, [key]: step[key] === undefined ? limit : undefined };
  });

const changeMovement: Change = changeStep((step, picks) => {
  if (step.kind !== "hold") return undefined;
  const { drop, rise, change, ...rest } = step;
  const name = pickFrom(["drop", "rise", "change"], picks) ?? "drop";
  return { ...rest, [name]: drop ?? rise ?? change };
});

const changeEvents: Change = changeStep((step) => {
  if (step.kind !== "timing") return undefined;
  const { "from-event": from, "to-event": _to, ...rest } = step;
  return from === undefined ? { ...rest, "from-event": "still", "to-event": "sound" } : rest;
});

const changeDefects: Change = changeStep((step, picks) => {
  if (step.kind !== "confirm") return undefined;
  const name = pickFrom(["torn", "soiled", "other"], picks) ?? "torn";
  const consequence = pickFrom(CONSEQUENCES, picks);
  const defects = isMap(step.defects) ? step.defects : {};
  return { ...step, defects: { ...defects, [name]: consequence === undefined ? undefined : { consequence } } };
});

const changeDate: Change = changeStep((step, picks) => {
  if (step.kind !== "in-date") return undefined;
  const { within: _within, "not-past": _notPast, ...rest } = step;
  const spans = ["P1M", "P2M", "P30D", "P28D", "P29D", "P10D", "P1M1D"].map((within) => ({ within }));
  return { ...rest, ...pickFrom<Data>([...spans, ...spans, { "not-past": true }], picks) };
});

const IGNORED = [undefined, ["case"], ["blanks"], ["case", "blanks"], ["hyphens"], ["hyphens", "blanks", "case"]];

const changePlaces: Change = changeStep((step, picks) => {
  if (step.kind !== "match") return undefined;
  const places = pickFrom<readonly unknown[]>(
    [
      ["back", "mask"],
      ["back", "mask", "tally"],
      ["mask", "tally"],
      ["back", { place: "mask", formerly: ["face"] }],
      ["back", { place: "mask", formerly: ["face"] }, "tally"],
      ["back", "mask", { place: "tally", formerly: ["tag"] }],
    ],
    picks,
  );
  return { ...step, places };
});

export const STEP_CHANGES: Readonly<Record<string, Change>> = {
  "the consequence of a step": setOfStep(undefined, "consequence", CONSEQUENCES),
  "a step is added": addStep,
  "a step is taken away": removeStep,
  "steps change places": turnSteps,
  "what a step comes after": changeAfter,
  "the kind of a step": exchangeKind,
  "a step is asked of each": switchEach,
  "a step is asked when fitted": setOfStep(undefined, "when-fitted", [undefined, "alarm"]),
  "the former name of a step": setOfStep(undefined, "formerly", [undefined, ["old-name"], ["torch"]]),
  "the instrument of a step": setOfStep("reading", "instrument", [undefined, "dial", "digital", "set-gauge"]),
  "how far members lie apart": changeApart,
  "the start of a hold": changeHold("start"),
  "how long a hold lasts": changeHold("lasting"),
  "which way a hold moves": changeMovement,
  "the events of a time": changeEvents,
  "a defect": changeDefects,
  "a step may be attested": setOfStep("confirm", "attestable", [true, undefined]),
  "a date": changeDate,
  "what a match ignores": setOfStep("match", "ignore", IGNORED),
  "the places of a match": changePlaces,
  "what a match equals": setOfStep("match", "equals", [undefined, "subject.marking", "subject.removed"]),
  "what a match differs from": setOfStep("match", "differs-from", [undefined, "subject.removed", "subject.spare"]),
};
