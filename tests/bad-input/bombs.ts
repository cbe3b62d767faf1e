const HEAD = 'tenbar: 1\npolicy: { id: a, title: t, version: "1", status: draft }\ndeference: d\n';
const RULE = `${HEAD}rules:\n  - rule: r\n    basis: { kind: common-practice }\n    require: `;

/** A text that is small and means a lot, or is large; the code that refuses it, and how often it is read in one process. */
export interface Bomb {
  readonly name: string;
  readonly times: number;
  readonly code: string;
  text(): string;
}

/** Nine lists of nine lists of nine, twelve times over. Source: the "billion laughs" of XML, with the aliases of YAML. */
function nestAliases(): string {
  const levels = Array.from({ length: 12 }, (_, level) => {
    const members = Array.from({ length: 9 }, () => (level === 0 ? "ha" : `*l${level - 1}`));
    return `l${level}: &l${level} [${members.join(", ")}]\n`;
  });
  return HEAD + levels.join("");
}

const countLines = (count: number, write: (index: number) => string) =>
  Array.from({ length: count }, (_, i) => write(i)).join("");

/** Why fifty times: the YAML library can end the process on the second or third of such texts, and not on the first. */
export const BOMBS: readonly Bomb[] = [
  { name: "aliases of aliases", times: 20, code: "read/alias", text: nestAliases },
  { name: "an alias in itself", times: 20, code: "read/alias", text: () => `${HEAD}x: &x [*x]\n` },
  { name: "merge keys of merge keys", times: 20, code: "read/merge-key", text: () => `${HEAD}x: &x\n  <<: [*x, *x]\n` },
  { name: "a thousand brackets", times: 50, code: "read/too-deep", text: () => "[".repeat(1000) + "]".repeat(1000) },
  {
    name: "brackets in a rule",
    times: 50,
    code: "read/too-deep",
    text: () => `${RULE}${"[".repeat(1000)}${"]".repeat(1000)}\n`,
  },
  {
    name: "a thousand braces",
    times: 50,
    code: "read/too-deep",
    text: () => `${RULE}${"{a: ".repeat(1000)}1${"}".repeat(1000)}\n`,
  },
  {
    name: "pairs in brackets",
    times: 50,
    code: "read/too-deep",
    text: () => `${RULE}${"[a: ".repeat(1000)}1${"]".repeat(1000)}\n`,
  },
  { name: "brackets never closed", times: 50, code: "read/too-deep", text: () => RULE + "[".repeat(10_000) },
  { name: "keys of keys", times: 50, code: "read/too-deep", text: () => RULE + "? ".repeat(5000) },
  { name: "hyphens", times: 50, code: "read/too-deep", text: () => `${RULE}\n      ${"- ".repeat(5000)}` },
  {
    name: "lines further and further in",
    times: 10,
    code: "read/too-deep",
    text: () => HEAD + countLines(1000, (i) => `${" ".repeat(i)}a:\n`),
  },
  { name: "50 MB of comment", times: 2, code: "read/too-large", text: () => `${HEAD}# ${"x".repeat(50_000_000)}` },
  {
    name: "50 MB of two-byte characters",
    times: 1,
    code: "read/too-large",
    text: () => `${HEAD}# ${"é".repeat(25_000_000)}`,
  },
  {
    name: "a million keys",
    times: 1,
    code: "read/too-large",
    text: () => HEAD + countLines(1_000_000, (i) => `k${i}: 1\n`),
  },
  {
    name: "a hundred thousand keys",
    times: 1,
    code: "read/too-many-nodes",
    text: () => HEAD + countLines(90_000, (i) => `k${i}: 1\n`),
  },
  {
    name: "one key forty thousand times",
    times: 1,
    code: "read/duplicate-key",
    text: () => HEAD + "k: 1\n".repeat(40_000),
  },
  {
    name: "a number of a million digits",
    times: 2,
    code: "read/number-not-exact",
    text: () => `${RULE}${"9".repeat(900_000)}\n`,
  },
  {
    name: "a quote of backslashes",
    times: 2,
    code: "read/unclosed-quote",
    text: () => `${RULE}"${"\\".repeat(900_000)}`,
  },
  { name: "blanks", times: 2, code: "read/empty", text: () => " ".repeat(1_000_000) },
  {
    name: "a limit of a million digits",
    times: 2,
    code: "read/too-long",
    text: () =>
      `${HEAD}tolerances:\n  a: { accept: { at-most: ${"9".repeat(900_000)} bar }, basis: { kind: common-practice } }\n`,
  },
  { name: "a number beyond all", times: 5, code: "read/number-not-exact", text: () => `${RULE}1e999\n` },
  { name: "NUL", times: 5, code: "read/control-character", text: () => "\0".repeat(500_000) },
  {
    name: "halves of characters",
    times: 5,
    code: "read/lone-surrogate",
    text: () => `${HEAD}x: ${"\ud800".repeat(100_000)}`,
  },
  {
    name: "a rule of a thousand terms",
    times: 10,
    code: "read/too-deep",
    text: () => `${RULE}${'{ "!": ['.repeat(500)}true${"] }".repeat(500)}\n`,
  },
];
