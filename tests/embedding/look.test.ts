import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { browserPath, openTab, type Tab } from "./drive-browser.js";
import { type BuiltPage, buildPage, servePage } from "./serve-page.js";

let page: BuiltPage;
beforeAll(() => {
  page = buildPage();
});
afterAll(() => page.remove());

interface Shown {
  readonly text: string;
  readonly colour: string;
  readonly ground: string;
}

/** Each element that holds text of its own, with its colour and what it stands on. */
const SHOWN = `[...document.querySelectorAll("body *")].filter((element) => element.checkVisibility({ visibilityProperty: true })
  && (element.tagName === "INPUT" ? element.value !== "" && element.type === "text"
    : [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim() !== "")))
  .map((element) => {
    let under = element;
    while (getComputedStyle(under).backgroundColor === "rgba(0, 0, 0, 0)") under = under.parentElement;
    return { text: element.textContent || element.value, colour: getComputedStyle(element).color,
      ground: getComputedStyle(under).backgroundColor };
  })`;

/** WCAG 2.2, relative luminance. */
function readLuminance(colour: string): number {
  const match = /^rgb\((\d+), (\d+), (\d+)\)$/.exec(colour);
  if (match === null) throw new Error(`no plain colour: ${colour}`);
  const [red = 0, green = 0, blue = 0] = match.slice(1).map((part) => {
    const share = Number(part) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, contrast ratio. */
function measureContrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [readLuminance(one), readLuminance(other)].sort((left, right) => right - left);
  return (light + 0.05) / (dark + 0.05);
}

const LONG = "W".repeat(300);

/** The form filled in with every outcome: within, close to the limit, outside, unreadable, open, and a long word. */
async function fill(tab: Tab): Promise<void> {
  await tab.waitFor("!document.getElementById('outcome').hidden");
  const texts = {
    "charge/C-301/reading": "275",
    "whistle//reading": "57,5",
    "line-full-length//reading": "5.5",
    "appearance//defect": LONG,
    "telemetry-time//elapsed": "",
  };
  for (const [id, text] of Object.entries(texts)) {
    await tab.read(`document.getElementById(${JSON.stringify(id)}).focus() ?? true`);
    await tab.press("Control+a");
    if (text === "") await tab.press("Backspace");
    else await tab.type(text);
  }
  await tab.read(`document.getElementById("finish").focus() ?? true`);
  await tab.press("Enter");
}

const atWidth = <T>(width: number, use: (tab: Tab) => Promise<T>): Promise<T> =>
  servePage(page, {}, (address) =>
    openTab(page.folder, `${address}?fill=sample`, async (tab) => {
      const size = { width, height: 1000, deviceScaleFactor: 1, mobile: false };
      await tab.send("Emulation.setDeviceMetricsOverride", size);
      await fill(tab);
      return use(tab);
    }),
  );

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browserPath === undefined)("the embedded form, as it looks", () => {
  it("has a contrast of 4.5 to 1 in every text, and of 3 to 1 in rings and edges", async () => {
    await atWidth(1000, async (tab) => {
      const outcomes: readonly string[] = JSON.parse(
        await tab.read(
          `[...new Set([...document.querySelectorAll(".state")].map(({ dataset }) => dataset.outcome ?? ""))]`,
        ),
      );
      expect([...outcomes].sort()).toEqual(["", "caution", "outside", "undecided", "within"]);
      const shown: readonly Shown[] = JSON.parse(await tab.read(SHOWN));
      expect(shown.length).toBeGreaterThan(200);
      expect(shown.some(({ text }) => text.startsWith("Cannot be read: "))).toBe(true);
      // WCAG 2.2, 1.4.3.
      for (const { text, colour, ground } of shown) {
        expect(measureContrast(colour, ground), text).toBeGreaterThanOrEqual(4.5);
      }
      await tab.press("Shift+Tab");
      const [ring, edge, paper]: readonly string[] = JSON.parse(
        await tab.read(`[getComputedStyle(document.activeElement).outlineColor,
          getComputedStyle(document.getElementById("charge/C-301/reading")).borderTopColor,
          getComputedStyle(document.body).backgroundColor]`),
      );
      // WCAG 2.2, 1.4.11.
      expect(measureContrast(ring ?? "", paper ?? "")).toBeGreaterThanOrEqual(3);
      expect(measureContrast(edge ?? "", paper ?? "")).toBeGreaterThanOrEqual(3);
    });
  }, 60_000);

  it.each([1000, 500, 320])(
    "fits a width of %i, with every long word wrapped",
    async (width) => {
      await atWidth(width, async (tab) => {
        expect(JSON.parse(await tab.read(`document.body.textContent.includes(${JSON.stringify(LONG)})`))).toBe(true);
        const over: readonly string[] = JSON.parse(
          await tab.read(`[...document.querySelectorAll("body *")].filter((element) =>
          element.id !== "announcement" && element.getBoundingClientRect().right > document.documentElement.clientWidth)
          .map(({ id, tagName }) => tagName + " " + id)`),
        );
        expect(over).toEqual([]);
        expect(JSON.parse(await tab.read("document.documentElement.scrollWidth <= innerWidth"))).toBe(true);
      });
    },
    60_000,
  );

  it("never calls a set safe", async () => {
    await atWidth(1000, async (tab) => {
      expect(await tab.read("document.documentElement.textContent")).not.toMatch(/\bsafe(ly|ty)?\b/i);
    });
  }, 60_000);
});
