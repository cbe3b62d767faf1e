import { isMap, listMaps, type Path, readAt } from "./evidence-path.js";
import { CYLINDERS, type Data } from "./generated-step.js";

const isWeighty = (consequence: unknown) => consequence !== "note" && consequence !== "advise";

/** Own consequence, else that of the tolerance written in the step, else that of the check, else `withdraw`. */
function weighStep(step: Data, check: Data): boolean {
  const tolerance = step.tolerance ?? step.drop ?? step.change;
  const written = isMap(tolerance) ? tolerance.consequence : undefined;
  return isWeighty(step.consequence ?? written ?? check.consequence ?? "withdraw");
}

/** The keys of a record step without which a requirement that weighs `refer` or more has not all that it needs. */
function listKeys(step: Data, check: Data): readonly string[] {
  const weighty = weighStep(step, check);
  if (step.kind === "hold") {
    // Start and lasting weigh `refer` whatever the drop does.
    const start = weighty || step.start !== undefined ? ["start"] : [];
    return [...start, ...(weighty ? ["end"] : []), ...(step.lasting === undefined ? [] : ["held"])];
  }
  if (!weighty) return [];
  if (step.kind === "confirm") return ["result"];
  if (step.kind === "match") return ["seen"];
  if (step.kind === "in-date") return ["on"];
  if (step.kind === "timing") return [step["from-event"] === undefined ? "elapsed" : "events"];
  return step.each === undefined ? ["reading"] : ["reading", "of"];
}

function* listStepPaths(data: Data, record: Data): Generator<Path> {
  const check = Object(readAt(data, ["checks", "daily"]));
  const listed = isMap(check.order) && check.order["listed-by"] === "at";
  for (const [index, entry] of listMaps(record.steps).entries()) {
    if (listed) yield ["steps", index, "at"];
    const step = listMaps(check.steps).find((one) => one.step === entry.step);
    for (const key of step === undefined ? [] : listKeys(step, check)) {
      yield ["steps", index, key];
      const value = entry[key];
      for (const place of isMap(value) ? Object.keys(value) : []) yield ["steps", index, key, place];
    }
  }
}

function* listSubjectPaths(data: Data): Generator<Path> {
  const check = Object(readAt(data, ["checks", "daily"]));
  const steps = listMaps(check.steps);
  const weighty = steps.filter((step) => listKeys(step, check).length > 0);
  const parts = new Set(weighty.flatMap((step) => step["when-fitted"] ?? []));
  if (parts.size > 0) yield ["fitted"];
  for (const part of parts) yield ["fitted", String(part)];
  if (weighty.some((step) => step.equals !== undefined)) yield ["marking"];
  if (data.rules !== undefined || weighty.some((step) => step.tolerance === "warning")) yield ["role"];
  const each = weighty.find((step) => step.each !== undefined);
  if (each !== undefined || check.intervals !== undefined) yield ["cylinders"];
  for (const index of CYLINDERS.keys()) {
    if (JSON.stringify(each ?? "").includes("rated-pressure")) yield ["cylinders", index, "ratedPressure"];
    if (check.intervals !== undefined) yield ["cylinders", index, "requalifiedOn"];
  }
}

/** Where a record holds what a requirement that weighs `refer` or more needs; told from the policy as it is written. */
export function listNeeded(data: Data, record: Data): readonly Path[] {
  const subject = [...listSubjectPaths(data)].map((path) => ["subject", ...path]);
  const competence =
    readAt(data, ["checks", "daily", "competence"]) === undefined ? [] : [["by"], ["by", "competence"]];
  return [...listStepPaths(data, record), ...subject, ...competence];
}
