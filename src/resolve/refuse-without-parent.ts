import type { Diagnostics } from "../diagnostics/index.js";
import type { ParsedPolicy } from "../read/index.js";

/** `without`, `before` and `behind` speak of a parent; true where one of them stands in a policy that has none. */
export function refuseWithoutParent(parsed: ParsedPolicy, diagnostics: Diagnostics): boolean {
  const { document } = parsed;
  const found = [
    ...(document.without === undefined ? [] : [{ key: "without", pointer: "/without" }]),
    ...Object.entries(document.checks ?? {}).flatMap(([name, check]) => [
      ...(check.without === undefined ? [] : [{ key: "without", pointer: `/checks/${name}/without` }]),
      ...(check.steps ?? []).flatMap((step, index) =>
        (["before", "behind"] as const)
          .filter((key) => step[key] !== undefined)
          .map((key) => ({ key, pointer: `/checks/${name}/steps/${index}/${key}` })),
      ),
    ]),
  ];
  for (const { key, pointer } of found) {
    diagnostics.report("resolve/needs-parent", parsed.place(pointer, "key"), { key });
  }
  return found.length > 0;
}
