// What may be loaded, directly or by way of other files, when the program runs: imports of types do not count here.
const table = require("./tests/layering/rooms.json");
const { options } = require("./.dependency-cruiser.cjs");

const pathOf = (name) => (name.endsWith(".ts") ? `^src/${name.replace(".", "\\.")}$` : `^src/${name}/`);

const reachRules = table.neverReach.flatMap(({ from, packages, rooms, node }) =>
  from.flatMap((name) => [
    {
      name: `${name}-never-loads-packages`,
      severity: "error",
      from: { path: pathOf(name) },
      to: { path: `(?:^|/)node_modules/(?:${packages.join("|")})/`, reachable: true },
    },
    {
      name: `${name}-never-loads-rooms`,
      severity: "error",
      from: { path: pathOf(name) },
      to: { path: `^src/(?:${rooms.join("|")})/`, reachable: true },
    },
    ...(node
      ? [
          {
            name: `${name}-never-loads-node`,
            severity: "error",
            from: { path: pathOf(name) },
            to: { path: `^(?:node:)?(?:${require("node:module").builtinModules.join("|")})$`, reachable: true },
          },
        ]
      : []),
  ]),
);

module.exports = { forbidden: reachRules, options: { ...options, tsPreCompilationDeps: false } };
