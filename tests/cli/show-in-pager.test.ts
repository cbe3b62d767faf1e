import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { showInPager } from "../../src/cli/show-in-pager.js";

const folder = mkdtempSync(join(tmpdir(), "tenbar-pager-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PATH = process.env["PATH"];
/** More than a pipe holds at once. */
const LONG = "plan/no-basis\n".repeat(50_000);

describe.skipIf(process.platform === "win32")("the pager of the reader", () => {
  it("gets the whole text, with the arguments that PAGER gives", async () => {
    const file = join(folder, "shown");
    expect(await showInPager(LONG, { PATH, PAGER: `tee ${file} > ${file}-too` })).toBe(true);
    expect(readFileSync(file, "utf8")).toBe(LONG);
    expect(readFileSync(`${file}-too`, "utf8")).toBe(LONG);
  });

  it("may be left before the end", async () => {
    expect(await showInPager(LONG, { PATH, PAGER: "true" })).toBe(true);
  });

  it("is not there: nothing was shown", async () => {
    expect(await showInPager("text", { PATH, PAGER: "no-such-pager-of-lowmere 2> /dev/null" })).toBe(false);
    expect(await showInPager("text", { PATH: folder })).toBe(false);
  });

  it("is not wanted where PAGER is empty", async () => {
    const file = join(folder, "never");
    expect(await showInPager("text", { PATH, PAGER: " " })).toBe(false);
    expect(existsSync(file)).toBe(false);
  });

  it("leaves no listener behind", async () => {
    const before = process.listenerCount("SIGINT");
    await showInPager("text", { PATH, PAGER: "cat > /dev/null" });
    await showInPager("text", { PATH: folder });
    expect(process.listenerCount("SIGINT")).toBe(before);
  });
});
