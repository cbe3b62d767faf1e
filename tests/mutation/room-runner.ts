import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { performance } from "node:perf_hooks";
import { Script } from "node:vm";
import { INSTRUMENTER_CONSTANTS, type MutantCoverage } from "@stryker-mutator/api/core";
import { declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import {
  type DryRunResult,
  DryRunStatus,
  determineHitLimitReached,
  type MutantRunOptions,
  type MutantRunResult,
  type TestResult,
  type TestRunner,
  type TestRunnerCapabilities,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { type Collection, collectTests } from "./collect-tests.js";

const BUNDLE = ".mutation/room.bundle.cjs";

/**
 * Laws over thousands of cases and the one test that judges all cases of the project, which take seconds for each mutant while the
 * tables beside them find what they find; and tests that a planted fault is found, which try the tests and not the sources.
 */
const LEFT_OUT = /\d[ ,]000| cover what the cases | does not with | would not where /;
const BROKEN = "the tests are put together";

/** What instrumented sources read and write. */
interface Instrumented {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  mutantCoverage?: MutantCoverage | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
}

type Bundle = (require: (name: string) => unknown, module: { exports: unknown }, exports: unknown) => void;

/**
 * Runs the tests of a room in this process: the bundle is one function, and calling it gives sources and tests that remember nothing.
 * Why not a runner of whole test files: starting one takes longer than the tests of most mutants.
 */
class RoomRunner implements TestRunner {
  #require: NodeJS.Require = createRequire(import.meta.url);
  #bundle: Bundle | undefined;

  capabilities(): TestRunnerCapabilities {
    return { reloadEnvironment: true };
  }

  init(): Promise<void> {
    // Laws with few cases: a mutant that only a longer run would find counts as survived.
    Object.assign(process.env, { TENBAR_RUNS: "20", TENBAR_RULES: "300" });
    const file = resolve(BUNDLE);
    this.#require = createRequire(file);
    const text = `(function (require, module, exports) {${readFileSync(file, "utf8")}\n})`;
    // Boundary: the text is the function that it was just wrapped into.
    this.#bundle = new Script(text, { filename: file }).runInThisContext() as Bundle;
    return Promise.resolve();
  }

  dryRun(): Promise<DryRunResult> {
    const shared = readShared();
    Object.assign(shared, { activeMutant: undefined, mutantCoverage: undefined, hitCount: undefined });
    return this.#run(shared, { stopsAtFailure: false }).then((result) =>
      result.status === DryRunStatus.Complete && shared.mutantCoverage !== undefined
        ? { ...result, mutantCoverage: shared.mutantCoverage }
        : result,
    );
  }

  async mutantRun(options: MutantRunOptions): Promise<MutantRunResult> {
    const { activeMutant, hitLimit, testFilter, disableBail } = options;
    const shared = readShared();
    Object.assign(shared, { hitCount: 0, hitLimit, activeMutant: activeMutant.id, mutantCoverage: undefined });
    const result = await this.#run(shared, { wanted: testFilter, stopsAtFailure: !disableBail });
    shared.activeMutant = undefined;
    return toMutantRunResult(determineHitLimitReached(shared.hitCount, hitLimit) ?? result);
  }

  async #run(shared: Instrumented, { wanted, stopsAtFailure }: RunOptions): Promise<DryRunResult> {
    const tests: TestResult[] = [];
    const collection = collectTests((file) => {
      shared.currentTestId = file === "" ? undefined : nameLoading(file);
    });
    const started = performance.now();
    try {
      this.#call(collection);
    } catch (error) {
      return { status: DryRunStatus.Complete, tests: [describeFailure(BROKEN, started, error)] };
    }
    shared.currentTestId = undefined;
    const known = new Map(collection.tests.map((test) => [test.id, test]));
    // Why: a mutant that takes tests away as they are declared is found by their number.
    for (const id of wanted ?? []) {
      if (!known.has(id)) tests.push(describeFailure(id, started, new Error("the test is not there")));
    }
    const chosen = wanted === undefined ? undefined : new Set(wanted);
    for (const test of collection.tests) {
      if (tests.length > 0 && stopsAtFailure && tests.some(({ status }) => status === TestStatus.Failed)) break;
      if (LEFT_OUT.test(test.id) || chosen?.has(test.id) === false) continue;
      shared.currentTestId = test.id;
      const begun = performance.now();
      try {
        await test.run();
        tests.push({ status: TestStatus.Success, id: test.id, name: test.id, timeSpentMs: performance.now() - begun });
      } catch (error) {
        tests.push(describeFailure(test.id, begun, error));
      }
      shared.currentTestId = undefined;
    }
    await collection.finish();
    countLoading(shared.mutantCoverage, collection);
    return { status: DryRunStatus.Complete, tests };
  }

  #call({ vitest, mark }: Collection): void {
    const module = { exports: {} };
    const shared: Readonly<Record<string, unknown>> = { vitest, mark: { mark } };
    this.#bundle?.((name) => shared[name] ?? this.#require(name), module, module.exports);
  }
}

interface RunOptions {
  readonly wanted?: readonly string[] | undefined;
  readonly stopsAtFailure: boolean;
}

function nameLoading(file: string): string {
  return `loading ${file}`;
}

/** What a file of tests reaches as it is loaded counts for each of its tests, which rest on it. */
function countLoading(coverage: MutantCoverage | undefined, { tests }: Collection): void {
  if (coverage === undefined) return;
  for (const { id, file } of tests) {
    coverage.perTest[id] = { ...coverage.perTest[nameLoading(file)], ...coverage.perTest[id] };
  }
  for (const { file } of tests) delete coverage.perTest[nameLoading(file)];
}

function describeFailure(id: string, begun: number, error: unknown): TestResult {
  const failureMessage = error instanceof Error ? error.message : String(error);
  return { status: TestStatus.Failed, id, name: id, timeSpentMs: performance.now() - begun, failureMessage };
}

function readShared(): Instrumented {
  // Boundary: instrumented sources keep it there, and what is not there yet is all optional.
  const place = globalThis as { [INSTRUMENTER_CONSTANTS.NAMESPACE]?: Instrumented };
  const shared = place[INSTRUMENTER_CONSTANTS.NAMESPACE] ?? {};
  place[INSTRUMENTER_CONSTANTS.NAMESPACE] = shared;
  return shared;
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "room", RoomRunner)];
