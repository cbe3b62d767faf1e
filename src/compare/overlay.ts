import type { CheckPlan, Plan, StepPlan } from "../model/index.js";

type Spot = [number, number, number];

/** A copy of a plan's checks and positions that can be added to. */
export class Overlay {
  readonly checks: CheckPlan[];
  readonly positions: Plan["positions"];
  /** By `check/step`, the check from which a step was put back. */
  private readonly inserted = new Map<string, CheckPlan>();

  constructor(plan: Plan) {
    this.checks = plan.checks.map((check) => ({
      ...check,
      steps: [...check.steps],
      adoptions: [...check.adoptions],
      intervals: check.intervals.map((interval) => ({ ...interval, adoptions: [...interval.adoptions] })),
    }));
    this.positions = { files: [...plan.positions.files], at: { ...plan.positions.at } };
  }

  findCheck(name: string): CheckPlan | undefined {
    return this.checks.find(({ check }) => check === name);
  }

  /**
   * Puts a step of the parent behind the last of those before it that are here, once for however many orders; false where its
   * name, or a former one under which it was recorded, is taken.
   */
  insertStep(parent: CheckPlan, step: StepPlan): boolean {
    const check = this.findCheck(parent.check);
    const name = `${parent.check}/${step.step}`;
    if (this.inserted.has(name)) return true;
    const names = [step.step, ...step.formerly];
    if (check === undefined || check.steps.some((one) => names.some((known) => isNamed(one, known)))) return false;
    const before = parent.steps.slice(0, parent.steps.indexOf(step)).map((one) => one.step);
    const last = check.steps.findLastIndex((one) => before.includes(one.step));
    this.inserted.set(name, parent);
    check.steps.splice(last + 1, 0, step);
    return true;
  }

  /** The checks, once every step is in: what is put back comes before and after what it did where it was left out. */
  listChecks(): readonly CheckPlan[] {
    return this.checks.map((check) => {
      const isKnown = (name: string) => check.steps.some((one) => isNamed(one, name));
      const steps = check.steps.map((step) => {
        const back = check.steps
          .map((one) => one.step)
          .filter((name) => {
            const stated = this.inserted.get(`${check.check}/${name}`)?.steps.find((one) => one.step === step.step);
            return stated?.after.includes(name) === true;
          });
        return { ...step, after: [...new Set([...step.after, ...back])].filter(isKnown) };
      });
      return { ...check, steps };
    });
  }

  /** Takes over where another plan states something, under its own key or another. */
  copyPosition(from: Plan, key: string, to: string = key): void {
    const known = from.positions.at[key];
    if (known === undefined) return;
    const move = ([file, line, column]: Spot): Spot => [this.findFile(from.positions.files[file] ?? ""), line, column];
    const { where, limitAt } = known;
    this.positions.at[to] = { where: move(where), ...(limitAt === undefined ? {} : { limitAt: move(limitAt) }) };
  }

  private findFile(name: string): number {
    const { files } = this.positions;
    if (!files.includes(name)) files.push(name);
    return files.indexOf(name);
  }
}

function isNamed({ step, formerly }: StepPlan, name: string): boolean {
  return step === name || formerly.includes(name);
}
