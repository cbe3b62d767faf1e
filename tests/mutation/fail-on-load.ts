import { TestRunner, test } from "vitest";

/**
 * Runs tests as usual, but where their file cannot be loaded, a test fails for it.
 * Why: mutation testing counts failed tests; a mutant that breaks what a file does as it is loaded would leave none and survive.
 */
// biome-ignore lint/style/noDefaultExport: vitest takes a runner by its default export
export default class FailOnLoad extends TestRunner {
  override async importFile(...given: Parameters<TestRunner["importFile"]>): Promise<unknown> {
    try {
      return await super.importFile(...given);
    } catch (error) {
      if (given[1] !== "collect") throw error;
      // Why: only the tests that reach the mutant are run, by their names, which this one does not share.
      Object.assign(this.config, { testNamePattern: undefined });
      test("its file is loaded", () => {
        throw error;
      });
      return undefined;
    }
  }
}
