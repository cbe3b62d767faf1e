import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Assessment, evaluate, type Policy, restorePlan } from "../../src/plan-entry.js";
import { browserPath, openTab, type Tab } from "./drive-browser.js";
import { type BuiltPage, buildPage, servePage } from "./serve-page.js";

type Found = Readonly<Record<string, unknown>>;
/** What stands at one stop of the Tab key, and where. */
interface Stop {
  readonly id: string;
  readonly kind: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly ring: string;
  readonly isCovered: boolean;
}

let page: BuiltPage;
let policy: Policy;
let head: Found;
let found: readonly Found[];

beforeAll(() => {
  page = buildPage();
  const restored = restorePlan(JSON.parse(page.read("plan.json")));
  if (restored.policy === undefined) throw new Error(restored.problem);
  policy = restored.policy;
  head = JSON.parse(page.read("record.json"));
  const sample: readonly Found[] = JSON.parse(page.read("sample.json"));
  // The pre-alarm by two readings of the clock, 30 s apart, as the stopwatch of the sample has it.
  const events = { still: "2026-04-14T07:10:00+01:00", "pre-alarm": "2026-04-14T07:10:30+01:00" };
  found = sample.map((entry) => (entry["step"] === "pre-alarm" ? { step: "pre-alarm", events } : entry));
});
afterAll(() => page.remove());

const STOP = `(() => {
  const element = document.activeElement;
  if (element === null || element === document.body) return null;
  const { top, left, bottom } = element.getBoundingClientRect();
  const { outlineStyle, outlineWidth, outlineColor, boxShadow } = getComputedStyle(element);
  const bar = document.getElementById("progress").getBoundingClientRect();
  return {
    id: element.id, kind: element.type ?? element.tagName.toLowerCase(),
    top: top + scrollY, left, bottom: bottom + scrollY,
    ring: outlineStyle === "none" && boxShadow === "none" ? "none" : outlineWidth + " " + outlineStyle + " " + outlineColor,
    isCovered: bottom > bar.top || top < 0,
  };
})()`;

async function readStop(tab: Tab): Promise<Stop | null> {
  const stop: Stop | null = JSON.parse(await tab.read(STOP));
  return stop;
}

/** Whatever can be reached by Tab, in the order of the text, of radio buttons the chosen one or the first. */
const REACHABLE = `[...document.querySelectorAll("main input, main button, main a")]
  .filter((element) => element.checkVisibility({ visibilityProperty: true }))
  .filter((element) => {
    if (element.type !== "radio") return true;
    const group = [...document.getElementsByName(element.name)];
    return element === (group.find(({ checked }) => checked) ?? group[0]);
  })
  .map(({ id }) => id)`;

/** What a hand types into each control: figures without their unit, times of the clock, words as they are. */
function listTyped(): ReadonlyMap<string, string> {
  const typed = new Map<string, string>();
  for (const { step, of = "", ...answers } of found) {
    for (const [key, value] of Object.entries(answers)) {
      const id = `${String(step)}/${String(of)}/${key}`;
      if (typeof value === "string") typed.set(id, value.replace(/ (bar|s|m)$/, ""));
      else for (const [name, text] of Object.entries(Object(value))) typed.set(`${id}/${name}`, shorten(String(text)));
    }
  }
  return typed;
}

const shorten = (text: string): string => /T(\d\d:\d\d:\d\d)/.exec(text)?.[1] ?? text;

/** Goes through the form once with Tab and answers at each stop; gives the stops. */
async function fillByKeys(tab: Tab): Promise<readonly Stop[]> {
  const typed = listTyped();
  const stops: Stop[] = [];
  for (;;) {
    await tab.press("Tab");
    const stop = await readStop(tab);
    if (stop === null || stops.length > 300) throw new Error("the button at the end was never reached");
    stops.push(stop);
    if (stop.kind === "submit") return stops;
    const text = typed.get(stop.id);
    if (stop.kind === "text" && text !== undefined) await tab.type(text);
    if (stop.kind === "radio" && stop.id.endsWith("/satisfactory")) {
      await tab.press(" ");
      // By the arrows to the next answer and back.
      await tab.press("ArrowDown");
      await tab.press("ArrowUp");
    }
  }
}

const judge = (steps: readonly Found[]): Assessment => evaluate(policy, { ...head, steps });
const correct = () => found.map((entry) => (entry["step"] === "whistle" ? { ...entry, reading: "60 bar" } : entry));
const TITLE = `document.getElementById("outcome").hidden ? "" : document.getElementById("outcome-title").textContent`;
const VERDICTS = { meets: "Meets the policy", refer: "Refer to a competent person", withdraw: "Withdraw from use" };

const inTab = <T>(use: (tab: Tab) => Promise<T>): Promise<T> =>
  servePage(page, {}, (address) =>
    openTab(page.folder, address, async (tab) => {
      await tab.waitFor("document.querySelector('.finish')");
      return use(tab);
    }),
  );

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browserPath === undefined)("the embedded form, by the keyboard alone", () => {
  it("is filled, finished, corrected and finished again, with the library's own verdicts", async () => {
    await inTab(async (tab) => {
      await fillByKeys(tab);
      expect(JSON.parse(await tab.read(TITLE))).toBe("");
      await tab.press("Enter");
      const first = judge(found);
      expect(first.verdict).toBe("withdraw");
      expect(JSON.parse(await tab.read(TITLE))).toBe(VERDICTS.withdraw);
      expect((await readStop(tab))?.id).toBe("outcome");
      expect(JSON.parse(await tab.read(`document.getElementById("announcement").textContent`))).toContain(
        `${VERDICTS.withdraw}. `,
      );
      const listed: readonly string[] = JSON.parse(
        await tab.read(
          `[...document.querySelectorAll("#findings li")].map(({ firstChild }) => firstChild.textContent)`,
        ),
      );
      expect(listed.map((text) => text.replace(/^\w+: |\. $/g, ""))).toEqual(
        first.findings.map(({ message }) => message.replaceAll("`", "")),
      );
      // From the finding to the figure, which is corrected there.
      await tab.press("Tab");
      await tab.press("Enter");
      expect((await readStop(tab))?.id).toBe("whistle//reading");
      await tab.press("Control+a");
      await tab.press("6");
      expect(JSON.parse(await tab.read(TITLE))).toBe("");
      await tab.press("0");
      await tab.press("Enter");
      const second = judge(correct());
      expect(second.verdict).toBe("meets");
      expect(JSON.parse(await tab.read(TITLE))).toBe(VERDICTS.meets);
    });
  }, 60_000);

  it("reaches every control in the order of the text, forth and back, and leaves the page at both ends", async () => {
    await inTab(async (tab) => {
      const reachable: readonly string[] = JSON.parse(await tab.read(REACHABLE));
      const walk = async (key: string): Promise<readonly Stop[]> => {
        const stops: Stop[] = [];
        for (;;) {
          await tab.press(key);
          const stop = await readStop(tab);
          if (stop === null || stops.length > reachable.length) return stops;
          stops.push(stop);
        }
      };
      const forth = await walk("Tab");
      expect(forth.map(({ id }) => id)).toEqual(reachable);
      const reading = [...forth].sort((one, other) => one.top - other.top || one.left - other.left);
      expect(forth.map(({ id }) => id)).toEqual(reading.map(({ id }) => id));
      // Beyond the first control the page is left, or begun again from its end; the first control keeps nothing.
      const back = await walk("Shift+Tab");
      expect(back[reachable.length]?.id).not.toBe(reachable[0]);
      // Of radio buttons without a choice the last is met from behind.
      const nameOf = (id: string) => id.replace(/\/[^/]*$/, "");
      expect(back.slice(0, reachable.length).map(({ id, kind }) => (kind === "radio" ? nameOf(id) : id))).toEqual(
        [...forth].reverse().map(({ id, kind }) => (kind === "radio" ? nameOf(id) : id)),
      );
    });
  }, 60_000);

  it("shows where the focus is at every stop, and never beneath the line of progress", async () => {
    await inTab(async (tab) => {
      const stops = await fillByKeys(tab);
      expect(stops.length).toBeGreaterThan(80);
      for (const { id, ring, isCovered } of stops) {
        expect(ring, id).toMatch(/^[2-9]px solid rgb\(/);
        expect(isCovered, id).toBe(false);
      }
    });
  }, 60_000);

  it("takes a choice back: a radio button by the button behind it, a box by the space bar", async () => {
    await inTab(async (tab) => {
      const progress = async (): Promise<string> =>
        JSON.parse(await tab.read(`document.getElementById("progress").textContent`));
      const goTo = async (id: string) => {
        for (let presses = 0; (await readStop(tab))?.id !== id; presses += 1) {
          if (presses > 100) throw new Error(`never reached ${id}`);
          await tab.press("Tab");
        }
      };
      const untouched = await progress();
      await goTo("harness//result/satisfactory");
      await tab.press(" ");
      const chosen = await progress();
      expect(chosen).not.toBe(untouched);
      await tab.press("Tab");
      expect((await readStop(tab))?.id).toBe("harness//result/clear");
      await tab.press("Enter");
      expect((await readStop(tab))?.id).toBe("harness//result/satisfactory");
      expect(await progress()).toBe(untouched);
      await goTo("whistle//occurred");
      await tab.press(" ");
      expect(await progress()).toContain("1 not accepted");
      await tab.press(" ");
      expect(await progress()).toBe(untouched);
    });
  }, 60_000);
});
