import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { browserPath, openTab, type Tab } from "./drive-browser.js";
import { type BuiltPage, buildPage, servePage } from "./serve-page.js";

// What a screen reader is given: the accessibility tree of the browser. It is no trial by a person with a reader.
// Names, roles and states: WCAG 2.2, 1.3.1 and 4.1.2; messages: 4.1.3; language: 3.1.1; errors in words: 3.3.1.

interface AxValue {
  readonly value?: unknown;
}
interface AxNode {
  readonly nodeId: string;
  readonly parentId?: string;
  readonly ignored: boolean;
  readonly role?: AxValue;
  readonly name?: AxValue;
  readonly description?: AxValue;
  readonly properties?: readonly { readonly name: string; readonly value: AxValue }[];
  readonly childIds?: readonly string[];
}
interface Field {
  readonly key: string;
  readonly type: string;
  readonly units?: readonly string[];
}
interface Step {
  readonly step: string;
  readonly ask: string;
  readonly applies: string;
  readonly fields: readonly Field[];
  readonly asked: readonly { readonly limits: readonly { readonly accept?: string }[] }[];
}

let page: BuiltPage;
let asked: readonly Step[];
beforeAll(() => {
  page = buildPage();
  const form: { steps: readonly Step[] } = JSON.parse(page.read("form.json"));
  asked = form.steps.filter(({ applies }) => applies !== "no");
});
afterAll(() => page.remove());

/** The nodes of the tree in the order in which they are read. */
async function readTree(tab: Tab): Promise<readonly AxNode[]> {
  const { nodes }: { nodes: readonly AxNode[] } = JSON.parse(await tab.send("Accessibility.getFullAXTree"));
  const known = new Map(nodes.map((node) => [node.nodeId, node]));
  const walk = (node: AxNode | undefined): readonly AxNode[] =>
    node === undefined ? [] : [node, ...(node.childIds ?? []).flatMap((id) => walk(known.get(id)))];
  return walk(nodes[0]);
}

const roleOf = ({ role }: AxNode): string => String(role?.value ?? "");
const nameOf = ({ name }: AxNode): string => String(name?.value ?? "");
const descriptionOf = ({ description }: AxNode): string => String(description?.value ?? "");
const propertyOf = ({ properties = [] }: AxNode, name: string): unknown =>
  properties.find((property) => property.name === name)?.value.value;

const ofRole = (tree: readonly AxNode[], ...roles: readonly string[]): readonly AxNode[] =>
  tree.filter((node) => !node.ignored && roles.includes(roleOf(node)));

/** The names of the groups that hold a node, from within. */
function listGroups(tree: readonly AxNode[], node: AxNode): readonly string[] {
  const parent = tree.find(({ nodeId }) => nodeId === node.parentId);
  if (parent === undefined) return [];
  return [...(roleOf(parent) === "group" ? [nameOf(parent)] : []), ...listGroups(tree, parent)];
}

const textOf = (tree: readonly AxNode[], node: AxNode): string =>
  [
    ...(roleOf(node) === "StaticText" ? [nameOf(node)] : []),
    ...(node.childIds ?? []).map((child) => {
      const found = tree.find(({ nodeId }) => nodeId === child);
      return found === undefined || roleOf(found) === "InlineTextBox" ? "" : textOf(tree, found);
    }),
  ].join("");

const findText = (tree: readonly AxNode[], words: string): AxNode => {
  const found = ofRole(tree, "textbox").find((node) => nameOf(node).includes(words));
  if (found === undefined) throw new Error(`no text box named ${words}`);
  return found;
};

const inTab = <T>(query: string, use: (tab: Tab) => Promise<T>): Promise<T> =>
  servePage(page, {}, (address) =>
    openTab(page.folder, `${address}${query}`, async (tab) => {
      await tab.waitFor("document.querySelector('.finish')");
      await tab.send("Accessibility.enable");
      return use(tab);
    }),
  );

async function typeInto(tab: Tab, id: string, text: string): Promise<void> {
  await tab.read(`document.getElementById(${JSON.stringify(id)}).focus() ?? true`);
  await tab.press("Control+a");
  await tab.type(text);
}

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browserPath === undefined)("the embedded form, as a screen reader is given it", () => {
  it("has a language, landmarks and headings in order", async () => {
    await inTab("?fill=sample", async (tab) => {
      await tab.waitFor("!document.getElementById('outcome').hidden");
      expect(JSON.parse(await tab.read("document.documentElement.lang"))).toBe("en");
      const tree = await readTree(tab);
      expect(ofRole(tree, "RootWebArea").map(nameOf)).toEqual(["Start-of-shift check, Lowmere"]);
      const landmarks = ofRole(tree, "banner", "main", "form", "region", "contentinfo");
      expect(landmarks.map((node) => [roleOf(node), nameOf(node)])).toEqual([
        ["banner", ""],
        ["main", ""],
        ["form", "Start-of-shift check (kind D in the log book)"],
        ["region", "Withdraw from use"],
        ["contentinfo", ""],
      ]);
      expect(ofRole(tree, "heading").map((node) => [propertyOf(node, "level"), nameOf(node)])).toEqual([
        [1, "Start-of-shift check (kind D in the log book)"],
        [2, "Withdraw from use"],
        [2, "What stands above this check"],
      ]);
      expect(ofRole(tree, "table", "radiogroup")).toEqual([]);
    });
  }, 60_000);

  it("names each control by question and unit, and describes it by its limits", async () => {
    await inTab("", async (tab) => {
      const tree = await readTree(tab);
      const controls = ofRole(tree, "textbox", "checkbox", "radio");
      const heard = controls.map((node) => ({
        node,
        words: [...listGroups(tree, node), nameOf(node), descriptionOf(node)].join(" | "),
      }));
      for (const { node, words } of heard) {
        expect(nameOf(node), words).not.toBe("");
        expect(
          asked.some(({ ask }) => words.includes(ask)),
          words,
        ).toBe(true);
      }
      const boxes = asked.flatMap(({ fields }) => fields).filter(({ type }) => type === "flag");
      expect(ofRole(tree, "checkbox")).toHaveLength(boxes.length);
      for (const { ask, fields, asked: parts } of asked) {
        for (const { type, units = [] } of fields) {
          if (type !== "quantity") continue;
          const own = heard.filter(({ node, words }) => roleOf(node) === "textbox" && words.includes(ask));
          expect(
            own.some(({ node }) => nameOf(node).endsWith(`in ${units[0]}`)),
            ask,
          ).toBe(true);
          const [limit = ""] = parts.flatMap(({ limits }) => limits.flatMap(({ accept }) => accept ?? []));
          expect(limit).not.toBe("");
          for (const { words } of own) expect(words).toContain(limit);
        }
      }
    });
  }, 60_000);

  it("groups radio buttons under their question, and says that an answer is wanted", async () => {
    await inTab("", async (tab) => {
      const tree = await readTree(tab);
      const choices = asked.filter(({ fields }) => fields.some(({ key }) => key === "result"));
      expect(choices.length).toBeGreaterThan(15);
      for (const { ask } of choices) {
        const group = ofRole(tree, "group").find((node) => nameOf(node).startsWith(ask));
        expect(group && descriptionOf(group), ask).toContain("Still to be filled in");
        const own = ofRole(tree, "radio").filter((node) => listGroups(tree, node)[0]?.startsWith(ask));
        expect(own.map(nameOf)).toEqual(["satisfactory", "defect", "not done"]);
      }
      const inner = ofRole(tree, "radio").filter((node) => listGroups(tree, node)[0] === "which defect");
      expect(inner.map(nameOf)).toContain("Strap frayed or cut");
      expect(ofRole(tree, "radio").every((node) => propertyOf(node, "invalid") === "false")).toBe(true);
    });
  }, 60_000);

  it("marks what is wanted, and no longer where it is said that it never came", async () => {
    await inTab("", async (tab) => {
      const whistle = "the whistle sound? reading";
      const before = await readTree(tab);
      expect(propertyOf(findText(before, whistle), "required")).toBe(true);
      expect(propertyOf(findText(before, "which defect"), "required")).toBe(false);
      await tab.read(`document.getElementById("whistle//occurred").focus() ?? true`);
      await tab.press(" ");
      expect(propertyOf(findText(await readTree(tab), whistle), "required")).toBe(false);
    });
  }, 60_000);

  it("marks a text that cannot be read, with the reason in words, until it can be", async () => {
    await inTab("", async (tab) => {
      const whistle = "the whistle sound? reading";
      expect(propertyOf(findText(await readTree(tab), whistle), "invalid")).toBe("false");
      await typeInto(tab, "whistle//reading", "57,5");
      const marked = findText(await readTree(tab), whistle);
      expect(propertyOf(marked, "invalid")).toBe("true");
      expect(descriptionOf(marked)).toContain("Cannot be read: a comma cannot be read: write a decimal with a point");
      await typeInto(tab, "whistle//reading", "57.5");
      const mended = findText(await readTree(tab), whistle);
      expect(propertyOf(mended, "invalid")).toBe("false");
      expect(descriptionOf(mended)).not.toContain("Cannot be read");
    });
  }, 60_000);

  it("takes the library's words where the page has none of its own", async () => {
    await inTab("", async (tab) => {
      // Finer than a second is kept: docs/units.md.
      await typeInto(tab, "telemetry-time//elapsed", "2.0000000001");
      const all = ofRole(await readTree(tab), "textbox").filter((node) => propertyOf(node, "invalid") === "true");
      expect(all.map(nameOf)).toEqual(["after, in s"]);
      expect(all.map(descriptionOf).join("")).toContain(
        "Cannot be read: the time cannot be judged: the figure is finer",
      );
    });
  }, 60_000);

  it("announces the judgement of a field that is left, and the verdict, and that it is taken back", async () => {
    await inTab("", async (tab) => {
      const announced = async (): Promise<string> => {
        const tree = await readTree(tab);
        const [status] = ofRole(tree, "status");
        if (status === undefined) throw new Error("there is no status");
        expect(propertyOf(status, "live")).toBe("polite");
        expect(propertyOf(status, "atomic")).toBe(true);
        return textOf(tree, status);
      };
      expect(await announced()).toBe("");
      await typeInto(tab, "whistle//reading", "50");
      // Nothing is said at each key.
      expect(await announced()).toBe("");
      await tab.press("Tab");
      expect(await announced()).toMatch(
        /^Not accepted: 50 bar was read; .* steps are still .* So far: 1 not accepted\.$/,
      );
      await tab.read(`document.getElementById("finish").focus() ?? true`);
      await tab.press("Enter");
      expect(await announced()).toMatch(/^Withdraw from use\. \d+ findings\.$/);
      await typeInto(tab, "whistle//reading", "57,5");
      expect(await announced()).toBe("");
      await tab.press("Tab");
      expect(await announced()).toMatch(/^The verdict is taken back\. Cannot be read: a comma/);
    });
  }, 60_000);
});
