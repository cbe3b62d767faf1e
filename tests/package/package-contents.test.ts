import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  compareNotice,
  compareWithList,
  findMachinePaths,
  findStrayParts,
  listPackagesInComments,
} from "../../src/workshop/package-contents.js";

const filesOf = (texts: Readonly<Record<string, string>>) =>
  new Map(Object.entries(texts).map(([path, text]) => [path, Buffer.from(text)]));

describe("the list of the files of the package", () => {
  const list = "# built\ndist/index.js\ndist/chunk-<hash>.js\n\ndocs/codes/*/*.md\n";
  const sound = ["dist/index.js", "dist/chunk-J4LNSW43.js", "docs/codes/plan/unused.md"];

  it("is content with what it names", () => {
    expect(compareWithList(sound, list)).toEqual([]);
  });

  it.each([
    [sound.slice(1), "the package lacks dist/index.js"],
    [[sound[0] ?? "", sound[2] ?? ""], "the package lacks dist/chunk-<hash>.js"],
    [[...sound, "dist/index.js.map"], "the package should not hold dist/index.js.map"],
    [[...sound, "dist/indexAjs"], "the package should not hold dist/indexAjs"],
    [[...sound, "dist/chunk-old.js"], "the package should not hold dist/chunk-old.js"],
    [[...sound, "old/dist/index.js"], "the package should not hold old/dist/index.js"],
    [[...sound, "docs/codes/plan/old/unused.md"], "the package should not hold docs/codes/plan/old/unused.md"],
  ])("tells a surplus or missing file: %j", (paths, problem) => {
    expect(compareWithList(paths, list)).toEqual([problem]);
  });
});

describe("the parts of a build", () => {
  const used = { "dist/index.js": 'import "./chunk-AAAAAAAA.js";', "dist/chunk-AAAAAAAA.js": "" };

  it("are each used by some other file", () => {
    expect(findStrayParts(filesOf(used))).toEqual([]);
    const types = { "dist/index.d.ts": "from './policy-CjygL-PP.js'", "dist/policy-CjygL-PP.d.ts": "" };
    expect(findStrayParts(filesOf(types))).toEqual([]);
  });

  it("are told where nothing uses them, themselves aside", () => {
    expect(findStrayParts(filesOf({ ...used, "dist/chunk-BBBBBBBB.js": 'import "./chunk-BBBBBBBB.js";' }))).toEqual([
      "nothing in the package uses dist/chunk-BBBBBBBB.js",
    ]);
  });
});

describe("a folder of the machine", () => {
  it.each([
    ['var file = "/home/ann/tenbar/src/index.ts";', "/home/ann"],
    ["// ../../Users/x and /Users/ann/tenbar", "/Users/ann"],
    [String.raw`"C:\\Users\\ann"`, String.raw`C:\\Users\\`],
    ["file:///opt/checkout/tenbar/src/index.ts", "/opt/checkout/tenbar"],
  ])("is found in %j", (text, found) => {
    expect(findMachinePaths(filesOf({ "dist/index.js": text }), ["/opt/checkout/tenbar", "/"])).toEqual([
      `dist/index.js names a folder of the machine it was made on: ${found}`,
    ]);
  });

  it.each(["// src/home/index.ts", "https://example.org/home/page", "../opt/checkout/tenbar", "a / b"])(
    "is not seen in %j",
    (text) => {
      expect(findMachinePaths(filesOf({ "dist/index.js": text }), ["/opt/checkout/tenbar", "/"])).toEqual([]);
    },
  );
});

describe("the notice in the package", () => {
  const rule = `\n${"-".repeat(80)}\n\n`;
  const ajv = "node_modules/ajv";

  it("is held against the name, version and licence of what is bundled", () => {
    expect(compareNotice(`${rule}ajv 0.0.1 (MIT)\n\nThe text.\n`, [ajv])).toEqual([
      expect.stringMatching(/^no licence text of what is bundled: ajv \d+\.\d+\.\d+ \(MIT\)$/),
      "a licence text of what is not bundled: ajv 0.0.1 (MIT)",
    ]);
  });

  it("needs a text behind the line", () => {
    expect(compareNotice(`${rule}ajv 8.20.0 (MIT)\n\n`, [ajv])).toHaveLength(1);
  });

  it("is compared with the packages that the bundler's comments name", () => {
    const text =
      '// node_modules/ajv/dist/ajv.js\nlet a = "// node_modules/b/c.js";\n  // node_modules/@noble/hashes/sha2.js\n';
    expect(listPackagesInComments(filesOf({ "dist/index.js": text, "docs/a.md": "// node_modules/z/a.js" }))).toEqual([
      "node_modules/@noble/hashes",
      ajv,
    ]);
  });
});

describe("the manifest", () => {
  it("has nothing that npm would run, or warn of, where the package is installed", () => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8"));
    expect(scripts).toHaveProperty("dependencies");
    for (const name of ["preinstall", "install", "postinstall", "prepublish", "preprepare", "prepare", "postprepare"])
      expect(scripts).not.toHaveProperty(name);
  });
});
