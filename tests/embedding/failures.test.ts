import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { browserPath, openTab } from "./drive-browser.js";
import { type BuiltPage, buildPage, type Replaced, servePage } from "./serve-page.js";

let page: BuiltPage;
beforeAll(() => {
  page = buildPage();
});
afterAll(() => page.remove());

/** What the page says of a failure, and whether any form or verdict stands beside it. */
async function readProblem(replaced: Replaced, query = ""): Promise<{ problem: string; isFormShown: boolean }> {
  return servePage(page, replaced, (address) =>
    openTab(page.folder, `${address}${query}`, async (tab) => {
      await tab.waitFor(`document.getElementById("problem")?.textContent`);
      const told: { problem: string; isFormShown: boolean; isJudged: boolean } = JSON.parse(
        await tab.read(`({
          problem: document.getElementById("problem").textContent,
          isFormShown: document.getElementById("check").checkVisibility(),
          isJudged: document.getElementById("outcome").checkVisibility(),
        })`),
      );
      expect(told.isJudged).toBe(false);
      return told;
    }),
  );
}

const another = (file: string, change: Readonly<Record<string, unknown>>) => ({
  [file]: JSON.stringify({ ...JSON.parse(page.read(file)), ...change }),
});

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browserPath === undefined)("the embedded form, where something fails", () => {
  const cases: readonly (readonly [string, () => Replaced, string])[] = [
    ["no plan", () => ({ "plan.json": 404 }), "the plan (plan.json) could not be fetched: the server answered 404"],
    ["no form", () => ({ "form.json": 503 }), "the form (form.json) could not be fetched: the server answered 503"],
    ["no record", () => ({ "record.json": 404 }), "the head of the record (record.json) could not be fetched"],
    ["a plan cut short", () => ({ "plan.json": '{"tenbar": 1,' }), "the plan (plan.json) was fetched but is not JSON"],
    ["a changed plan", () => another("plan.json", { deference: "None." }), "the plan was refused: "],
    ["no form at all", () => ({ "form.json": "[]" }), "form.json was fetched but is not the form"],
    ["half a form", () => another("form.json", { steps: undefined }), "form.json was fetched but is not the form"],
    ["another form", () => another("form.json", { policy: { digest: "" } }), "the form belongs to another plan"],
  ];
  it.each(cases)(
    "says so of %s, and shows no form",
    async (_name, replace, words) => {
      const { problem, isFormShown } = await readProblem(replace());
      expect(problem).toMatch(/^Nothing is judged on this page: /);
      expect(problem).toContain(words);
      expect(isFormShown).toBe(false);
    },
    60_000,
  );

  it("says so of no sample, and leaves the form to be filled", async () => {
    const { problem, isFormShown } = await readProblem({ "sample.json": 404 }, "?fill=sample");
    expect(problem).toContain("Nothing is filled in: the sample (sample.json) could not be fetched");
    expect(isFormShown).toBe(true);
  }, 60_000);
});
