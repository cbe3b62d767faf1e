import { JestAsymmetricMatchers, JestChaiExpect, JestExtend } from "@vitest/expect";
import * as chai from "chai";

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

type Body = (...given: readonly unknown[]) => unknown;
type Hook = () => unknown;

interface Suite {
  readonly name: string;
  readonly outer: Suite | undefined;
  readonly before: Hook[];
  readonly after: Hook[];
  readonly afterEach: Hook[];
}

export interface CollectedTest {
  /** The names of its suites and its own, with its number among those of the same name. */
  readonly id: string;
  /** The file that declares it. */
  readonly file: string;
  /** Runs it with the hooks around it; throws or rejects where it fails. */
  run(): Promise<void>;
}

/** What test files import as `vitest`, as far as those of the rooms do, and the tests that they declare with it. */
export interface Collection {
  readonly vitest: Readonly<Record<string, unknown>>;
  /** Called with the name of each file of tests before it is loaded. */
  mark(file: string): void;
  /** In the order of the files. */
  readonly tests: readonly CollectedTest[];
  /** Runs the hooks that stand after all tests of a suite. */
  finish(): Promise<void>;
}

/** The tests that a bundle declares while it is called; what throws meanwhile goes to the caller of the bundle. */
export function collectTests(onFile: (file: string) => void = () => undefined): Collection {
  let file = "";
  let current: Suite = makeSuite("", undefined);
  const tests: CollectedTest[] = [];
  const counts = new Map<string, number>();
  const begun = new Set<Suite>();

  const describe = (name: string, body: Body, ...given: readonly unknown[]) => {
    const outer = current;
    current = makeSuite(name, outer);
    try {
      body(...given);
    } finally {
      current = outer;
    }
  };
  const it = (name: string, body: Body, ...given: readonly unknown[]) => {
    const suite = current;
    const named = [...listOuter(suite).map((one) => one.name), name].join(" ").trim();
    const count = (counts.get(named) ?? 0) + 1;
    counts.set(named, count);
    tests.push({ id: `${named} #${count}`, file, run: () => runTest(suite, begun, () => body(...given)) });
  };
  return {
    vitest: {
      expect: chai.expect,
      describe: Object.assign(describe, { each: makeEach(describe) }),
      it: Object.assign(skipTimeout(it), { each: makeEach(it), skipIf: skipIf(it), runIf: skipIf(it, false) }),
      beforeAll: (hook: Hook) => current.before.push(hook),
      afterAll: (hook: Hook) => current.after.push(hook),
      afterEach: (hook: Hook) => current.afterEach.push(hook),
    },
    mark(next) {
      file = next;
      onFile(next);
    },
    tests,
    async finish() {
      for (const suite of [...begun].reverse()) for (const hook of suite.after) await hook();
    },
  };
}

type Declare = (name: string, body: Body, ...given: readonly unknown[]) => void;

function makeSuite(name: string, outer: Suite | undefined): Suite {
  return { name, outer, before: [], after: [], afterEach: [] };
}

/** From the outermost to the suite itself. */
function listOuter(suite: Suite): readonly Suite[] {
  return suite.outer === undefined ? [suite] : [...listOuter(suite.outer), suite];
}

async function runTest(suite: Suite, begun: Set<Suite>, body: Hook): Promise<void> {
  const suites = listOuter(suite);
  for (const one of suites) {
    if (begun.has(one)) continue;
    begun.add(one);
    for (const hook of one.before) await hook();
  }
  try {
    await body();
  } finally {
    for (const one of suites) for (const hook of one.afterEach) await hook();
  }
}

/** Why: beside its body a single test may be given the time that it may take, before it or behind. */
function skipTimeout(declare: Declare) {
  return (name: string, ...given: readonly unknown[]) => {
    const body = given.find(isBody);
    if (body === undefined) throw new Error(`the test ${name} has no body`);
    declare(name, body);
  };
}

function isBody(value: unknown): value is Body {
  return typeof value === "function";
}

function skipIf(declare: Declare, skipped = true) {
  return (condition: unknown) => (name: string, body: Body) => {
    if (Boolean(condition) !== skipped) declare(name, body);
  };
}

function makeEach(declare: Declare) {
  return (rows: readonly unknown[]) => (name: string, body: Body) => {
    // Why: as vitest does, which hands a list on whole where it stands beside other values.
    const areLists = rows.every(Array.isArray);
    for (const row of rows) {
      const given: readonly unknown[] = areLists && Array.isArray(row) ? row : [row];
      declare(name, body, ...given);
    }
  };
}
