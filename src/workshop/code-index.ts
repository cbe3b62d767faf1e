// Makes the index of the pages of codes, docs/codes/README.md, from the pages themselves.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDER = "docs/codes";

const INTRODUCTION = `# Codes

Every diagnostic of a policy, every finding and every remark has a code. Each code has a page here: what it means, why it
matters, how to mend it, and an example of each side. \`tenbar explain CODE\` shows the page on a screen, \`tenbar explain\`
lists them all.

Codes are under semantic versioning. Within one major version no code is taken away, renamed or given another meaning, and
no warning becomes an error. New codes come with minor versions. \`since\` on each page says from which version it is there.
Messages are for people: their wording may change at any time, so a program goes by codes and \`params\`.

- The **severity** of a diagnostic is \`error\`, and the policy is not used, or \`warning\`, and it is.
- The **consequence** of a finding is what it weighs. \`as stated\`: what the policy states for the requirement. A caution weighs
  \`advise\` and a gap \`refer\`, or what the requirement weighs where that is less. Under \`undecided: as-outside\` a gap weighs
  what the failure would. \`not-done\`, and a result in an unknown word, weigh \`refer\` at least.

The examples are those of the invented brigade of Lowmere. An example is a file called \`policy.yaml\`, or as its first line
says; it is compiled on 12 April 2026. \`{{4 × "ab"}}\` in an example stands for \`abababab\`, where that would be too long to print.
`;

const PARTS = [
  { title: "Diagnostics", weight: "severity", holds: ({ isReason, severity }: Row) => !isReason && severity !== "" },
  { title: "Findings", weight: "consequence", holds: ({ isReason, severity }: Row) => !isReason && severity === "" },
  { title: "Reasons", weight: "consequence", holds: ({ isReason }: Row) => isReason },
] as const;

interface Row {
  readonly file: string;
  readonly code: string;
  readonly isReason: boolean;
  /** Empty on the page of a finding. */
  readonly severity: string;
  readonly weight: string;
  readonly summary: string;
}

/** The index as the pages give it. */
export function renderCodeIndex(): string {
  const rows = readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => /^[a-z-]+\/[a-z-]+\.md$/.test(file))
    .sort()
    .map(readRow);
  const parts = PARTS.map(({ title, weight, holds }) => {
    const lines = rows.filter(holds).map((row) => `| [${row.code}](${row.file}) | ${row.weight} | ${row.summary} |`);
    return `\n## ${title}\n\n| code | ${weight} | means |\n| --- | --- | --- |\n${lines.join("\n")}\n`;
  });
  return INTRODUCTION + parts.join("");
}

function readRow(file: string): Row {
  const text = readFileSync(join(FOLDER, file), "utf8");
  const readHead = (key: string) => new RegExp(`^${key}: (.*)$`, "m").exec(text)?.[1] ?? "";
  const means = /\n## Means\n+([\s\S]*?)\n\n/.exec(text)?.[1]?.replaceAll("\n", " ") ?? "";
  const severity = readHead("severity");
  return {
    file,
    code: readHead("code"),
    isReason: file.startsWith("reasons/"),
    severity,
    weight: severity === "" ? readHead("consequence") : severity,
    summary: means.replaceAll("|", "\\|"),
  };
}
