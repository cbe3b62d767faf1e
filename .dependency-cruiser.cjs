// The rules of the house, made from the table in tests/layering/rooms.json: imports as they are written.
const table = require("./tests/layering/rooms.json");

const NO_MATCH = "(?!)";
const anyOf = (names) => (names.length === 0 ? NO_MATCH : `(?:${names.join("|")})`);

const roomRules = table.rooms.flatMap(({ room, imports, importsTypes, packages, node }) => {
  const from = { path: `^src/${room}/` };
  const others = (names) => `^src/(?!${anyOf([room, ...names])}/)[^/]+/`;
  return [
    {
      name: `${room}-imports`,
      severity: "error",
      comment: `${room} may import from: ${imports.join(", ") || "no other room"}`,
      from,
      to: { path: others(imports), dependencyTypesNot: ["type-only"] },
    },
    {
      name: `${room}-imports-types`,
      severity: "error",
      comment: `${room} may import types from: ${[...imports, ...importsTypes].join(", ") || "no other room"}`,
      from,
      to: { path: others([...imports, ...importsTypes]) },
    },
    ...(packages.includes("*")
      ? []
      : [
          {
            name: `${room}-packages`,
            severity: "error",
            comment: `${room} may use the packages: ${packages.join(", ") || "none"}`,
            from,
            to: { path: `(?:^|/)node_modules/(?!${anyOf(packages)}/)` },
          },
        ]),
    ...(node ? [] : [{ name: `${room}-node`, severity: "error", from, to: { dependencyTypes: ["core"] } }]),
  ];
});

const doorRules = table.doors.flatMap(({ door, imports, usedBy }) => {
  const path = `^src/${door.replace(".", "\\.")}$`;
  return [
    {
      name: `${door}-imports`,
      severity: "error",
      comment: `${door} opens: ${imports.join(", ")}`,
      from: { path },
      to: { path: `^src/(?!${anyOf(imports)}/)[^/]+/` },
    },
    {
      name: `${door}-used-by`,
      severity: "error",
      comment: `rooms that may come in through ${door}: ${usedBy.join(", ") || "none"}`,
      from: { path: "^src/[^/]+/", pathNot: `^src/${anyOf(usedBy)}/` },
      to: { path },
    },
    { name: `${door}-packages`, severity: "error", from: { path }, to: { path: "(?:^|/)node_modules/" } },
    { name: `${door}-node`, severity: "error", from: { path }, to: { dependencyTypes: ["core"] } },
  ];
});

module.exports = {
  forbidden: [
    ...roomRules,
    ...doorRules,
    {
      name: "through-the-door",
      severity: "error",
      comment: "another room is entered through its index.ts",
      from: { path: "^src/([^/]+)/" },
      to: { path: "^src/(?!$1/)[^/]+/(?!index\\.ts$)" },
    },
    {
      name: "doors-through-the-door",
      severity: "error",
      comment: "a public door names what rooms hand on in their index.ts",
      from: { path: "^src/[^/]+$" },
      to: { path: "^src/[^/]+/(?!index\\.ts$)" },
    },
    {
      name: "no-cycle",
      severity: "error",
      comment: "files that import each other belong together or apart",
      from: {},
      to: { circular: true },
    },
    {
      name: "inside-src",
      severity: "error",
      comment: "what ships imports nothing from the tests",
      from: { path: "^src/" },
      to: { path: "^(?!src/|schemas/)", dependencyTypes: ["local"] },
    },
    { name: "resolvable", severity: "error", from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: "(?:^|/)node_modules/" },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "types", "node", "default"],
      extensions: [".ts", ".js", ".d.ts", ".json"],
    },
  },
};
