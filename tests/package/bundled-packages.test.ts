import { describe, expect, it } from "vitest";
import { listBundledPackages, renderNotice } from "../../src/workshop/bundled-packages.js";

describe("the notice about bundled code", () => {
  it.each([
    [["src/index.ts", "node_modules/yaml/dist/index.js"], ["node_modules/yaml"]],
    [["node_modules/@noble/hashes/sha2.js", "node_modules/@noble/hashes/utils.js"], ["node_modules/@noble/hashes"]],
    [
      ["node_modules/a/node_modules/b/index.js", "node_modules/a/index.js"],
      ["node_modules/a", "node_modules/a/node_modules/b"],
    ],
    [["node_modules\\a\\index.js"], ["node_modules/a"]],
    [["src/node_modules.ts"], []],
  ])("finds in %j the packages %j", (inputs, packages) => {
    expect(listBundledPackages(inputs)).toEqual(packages);
  });

  it("carries the licence text of each package, once", () => {
    const notice = renderNotice(["node_modules/ajv", "node_modules/canonicalize", "node_modules/ajv"]);
    expect(notice.match(/^ajv \d+\.\d+\.\d+ \(MIT\)$/gm)).toHaveLength(1);
    expect(notice).toMatch(/^canonicalize \d+\.\d+\.\d+ \(Apache-2\.0\)$/m);
    expect(notice).toContain("THE SOFTWARE IS PROVIDED");
    expect(notice).toContain("Apache License");
  });

  it("refuses a package that states no licence", () => {
    expect(() => renderNotice(["tests/package/built"])).toThrow();
  });
});
