// Mutation testing of one room of `src`: `TENBAR_ROOM=quantities npm run test:mutation`; `quantities` where none is named.
// What survives and why is in `survivors.md`.
const ROOMS = ["quantities", "rules", "steps", "evaluate"];
const room = process.env.TENBAR_ROOM ?? "quantities";
if (!ROOMS.includes(room)) throw new Error(`TENBAR_ROOM is ${room}; there are ${ROOMS.join(", ")}`);

export default {
  testRunner: "room",
  plugins: ["./tests/mutation/room-runner.ts"],
  buildCommand: "tsx tests/mutation/bundle-tests.ts",
  mutate: [`src/${room}/**/*.ts`, `!src/${room}/index.ts`],
  // Why: most texts are codes and names of literal types, so an emptied one does not compile. Those that are plain text, such as
  // the spellings of units, are not measured here.
  mutator: { excludedMutations: ["StringLiteral"] },
  coverageAnalysis: "perTest",
  // Why: many tests compile their policy as their file is loaded; a mutant that runs there is tried on every test.
  ignoreStatic: false,
  incremental: true,
  incrementalFile: `.mutation/${room}.json`,
  reporters: ["clear-text", "json", "progress-append-only"],
  jsonReporter: { fileName: `.mutation/${room}-report.json` },
  clearTextReporter: { allowColor: false, logTests: false, allowEmojis: false, reportTests: false },
  tempDirName: ".mutation/sandbox",
  ignorePatterns: ["dist", "examples/embedding/dist", ".mutation"],
  // Why: a loop without end is mostly told by its count; on a busy machine a shorter wait would count slow tests as found.
  timeoutMS: 30_000,
  timeoutFactor: 2,
  concurrency: Number(process.env.TENBAR_CONCURRENCY ?? 2),
  warnings: { slow: false },
  thresholds: { high: 95, low: 85, break: 85 },
};
