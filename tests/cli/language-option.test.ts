import { afterAll, describe, expect, it } from "vitest";
import { makeFolder, runProgram } from "./run-in-process.js";
import { makeRecord, POLICY_TEXT } from "./sample-policy.js";

const files = makeFolder();
afterAll(files.remove);

const policy = files.put("policy.yaml", POLICY_TEXT);
const faulty = files.put("faulty.yaml", POLICY_TEXT.replace("at-most: 10 bar", "at-most: 10 bars"));
const leaking = files.put("leaking.json", JSON.stringify(makeRecord({ end: "270 bar" })));
const HEAD = 'tenbar: 1\npolicy: { id: lowmere/two, title: Two, version: "1", status: local }\n';
const LANGUAGE = ["--language", "de"] as const;

describe("--language", () => {
  it("lets evaluate print its report in that language, and exit as ever", async () => {
    const inGerman = await runProgram(["evaluate", policy, leaking, ...LANGUAGE]);
    const inEnglish = await runProgram(["evaluate", policy, leaking]);
    expect(inGerman.code).toBe(inEnglish.code);
    expect(inGerman.out).toContain("  sperren   leak, Abfall: außerhalb\n");
    expect(inGerman.out).toContain("Der Druck fiel während der Haltezeit um `20 bar`; zulässig sind\n");
    expect(inGerman.out).toContain("Eine Beurteilung gilt für ein Protokoll");
    expect(inGerman.out).not.toMatch(/accepted|withdraw|beyond|basis/);
    expect(await runProgram(["evaluate", policy, leaking, "--language", "en"])).toEqual(inEnglish);
  });

  it("changes the sentences of JSON, and neither its codes nor its figures", async () => {
    const print = async (...words: string[]) =>
      JSON.parse((await runProgram(["evaluate", policy, leaking, "--format", "json", ...words])).out);
    const inGerman = await print(...LANGUAGE);
    const inEnglish = await print();
    expect(inGerman.findings[0].message).toMatch(/^der Druck fiel /);
    expect(inGerman.results.map(({ accept }: { accept?: string }) => accept)).toContain("höchstens 10 bar");
    for (const key of ["verdict", "counts", "policy", "recordDigest", "recordId", "deference"]) {
      expect(inGerman[key]).toEqual(inEnglish[key]);
    }
    const idOf = ({ code, fingerprint, consequence }: Readonly<Record<string, unknown>>) => [
      code,
      fingerprint,
      consequence,
    ];
    expect(inGerman.findings.map(idOf)).toEqual(inEnglish.findings.map(idOf));
  });

  it("lets compile say what is wrong in that language, in both formats", async () => {
    const text = await runProgram(["compile", faulty, ...LANGUAGE]);
    expect(text.code).toBe(2);
    expect(text.out).toContain("Fehler plan/bad-quantity");
    expect(text.out).toContain("verlangt: eine Zahl, ein Leerzeichen und eines von");
    expect(text.out).toContain("Abhilfe: `10 bar` schreiben");
    expect(text.out).toMatch(/\n1 Fehler, 0 Warnungen\n$/);
    const { diagnostics } = JSON.parse((await runProgram(["compile", faulty, ...LANGUAGE, "--format", "json"])).out);
    expect(diagnostics[0]).toMatchObject({ code: "plan/bad-quantity", severity: "error", mend: "`10 bar` schreiben" });
    const resolved = await runProgram(["compile", policy, "--resolved", ...LANGUAGE]);
    expect(resolved.out).toContain("    Abfall: sperren, höchstens 10 bar");
  });

  it("lets evaluate and describe say the same of a policy that has errors", async () => {
    for (const words of [
      ["evaluate", faulty, leaking],
      ["describe", faulty, "daily"],
    ]) {
      const { code, error } = await runProgram([...words, ...LANGUAGE]);
      expect(code).toBe(2);
      expect(error).toContain("Fehler plan/bad-quantity");
    }
  });

  it("lets describe say the limits in that language", async () => {
    const { out } = await runProgram(["describe", policy, "daily", ...LANGUAGE]);
    expect(out).toContain('"accept": "mindestens 100 bar"');
    expect(out).toContain('"accept": "höchstens 10 bar"');
  });

  it("lets a file that cannot be used be told in that language", async () => {
    const missing = files.put("child.yaml", `${HEAD}extends: ./polcy.yaml\n`);
    const runs: readonly (readonly [readonly string[], string])[] = [
      [["compile", "no-such.yaml"], "no-such.yaml: die Datei gibt es nicht\n"],
      [["compile", files.folder], "das ist ein Ordner\n"],
      [["compile", policy, "--out", policy], `damit würde \`${policy}\` ersetzt\n`],
      [["evaluate", policy, "no-such.json"], "no-such.json: die Datei gibt es nicht"],
      [["describe", policy, "daily", "--subject", "no-such.json"], "no-such.json: die Datei gibt es nicht\n"],
      [["describe", files.put("plan.json", '{"kind": "plan"'), "daily"], "der Plan lässt sich nicht lesen: "],
    ];
    for (const [words, said] of runs) {
      const { code, error } = await runProgram([...words, ...LANGUAGE]);
      expect(code).toBe(2);
      expect(error).toContain(said);
    }
    const { out } = await runProgram(["compile", missing, ...LANGUAGE]);
    expect(out).toContain("ist nicht verfügbar: die Datei gibt es");
    expect(out).toContain("Abhilfe: `./policy.yaml` schreiben");
  });

  it.each([
    ['{"tenbar": 1,}', ":1:14: vor dem schließenden `}` steht ein Komma"],
    ['{"tenbar" 1}', ":1:11: `1` steht da, wo `:` verlangt ist"],
    ["[1", ":1:3: der JSON-Text endet zu früh"],
    ['{"a": 1, "a": 2}', ":1:10: der Schlüssel `a` steht zweimal in einem Objekt"],
    ["[".repeat(600), ":1:513: mehr als 512 Ebenen sind ineinander geschachtelt"],
    [new Uint8Array([0x7b, 0xff]), ":1: das ist kein Text in UTF-8"],
  ])("lets a record that is no JSON be told in that language: %s", async (input, said) => {
    const { error } = await runProgram(["evaluate", policy, "-", ...LANGUAGE], { input });
    expect(error).toContain(`-${said}`);
    const subject = files.put("subject.json", input);
    const described = await runProgram(["describe", policy, "daily", "--subject", subject, ...LANGUAGE]);
    expect(described.error).toContain(said.replace(/^.*: (?=\D)/, ""));
    const saved = files.put("broken-plan.json", '{"kind": "plan", }');
    expect((await runProgram(["describe", saved, "daily", ...LANGUAGE])).error).toContain(
      "der Plan lässt sich nicht lesen: vor dem schließenden `}` steht ein Komma",
    );
  });

  it.each([
    [
      ["evalute", policy],
      "den Befehl `evalute` gibt es nicht; ist `evaluate` gemeint?\nmehr dazu sagt `tenbar --help`\n",
    ],
    [["--halp"], "die Option `--halp` gibt es nicht; ist `--help` gemeint?\n"],
    [["evaluate", policy, "--fromat=json"], "die Option `--fromat` gibt es nicht; ist `--format` gemeint?\n"],
    [
      ["evaluate", policy, "--format", "jsn"],
      "`--format jsn` ist keines von text, json, ndjson, junit, csv; ist `json`",
    ],
    [["evaluate", policy, "--format="], "`--format` verlangt FORMAT\n"],
    [["evaluate", policy, "--as-of", "2026-02-30"], "`--as-of 2026-02-30` ist kein Tag wie 2026-04-01\n"],
    [["evaluate", policy, "--allow-empty=yes"], "`--allow-empty` nimmt keinen Wert\n"],
    [["evaluate", policy], "RECORDS fehlt; Aufruf: tenbar evaluate POLICY RECORDS..."],
    [["evaluate", policy, "-", "-"], "`-` ist zweimal genannt; die Standardeingabe wird einmal gelesen\n"],
    [["compile", policy, "other.yaml"], "`other.yaml` ist ein Argument zu viel; Aufruf: tenbar compile POLICY"],
    [["compile", policy, "--out", "--resolved"], "was mit `-` beginnt, wird `--out=--resolved` geschrieben\n"],
    [["compile", policy, "--as-of=2026-04-01", "--as-of=2026-04-01"], "`--as-of` ist zweimal angegeben\n"],
    [["describe", policy, "daily", "--at", "soon"], "`--at soon` ist keine Zeit wie 2026-04-12 oder"],
    [["describe", policy, "dialy"], "keine Prüfung `dialy`; sie hat daily; ist `daily` gemeint?\n"],
    [["describe", policy, "daily", "--subject", leaking], "was darin unter `subject` steht, in eine Datei schreiben\n"],
    [["evaluate", policy, "-"], "kein Protokoll wurde beurteilt: die Standardeingabe enthält keines\n"],
    [
      ["evaluate", policy, "no-such.json"],
      "kein Protokoll wurde beurteilt: was angegeben ist, ließ sich nicht lesen\n",
    ],
    [["evaluate", policy, files.folder], ": das ist ein Ordner; nicht beurteilt\n"],
  ])("lets %j be refused in that language, before or behind what is wrong", async (words, said) => {
    const behind = await runProgram([...words, ...LANGUAGE]);
    expect(behind).toMatchObject({ code: 2, error: expect.stringContaining(said) });
    const [command = "", ...rest] = words;
    const before = await runProgram([command, "--language=de", ...rest]);
    expect(before).toEqual(behind);
  });

  it("lets describe note in that language what a station comes to", async () => {
    const lowmere = "examples/lowmere/policy.yaml";
    const describe = (path: string) => runProgram(["describe", path, "daily", "--station", "Lowmere3", ...LANGUAGE]);
    const without = "Hinweis: ohne `--at` gilt keine Ausnahme, also auch keine der Wache\n";
    expect((await describe(policy)).error).toBe(
      `Hinweis: in der Richtlinie hängt nichts von einer Wache ab\n${without}`,
    );
    expect((await describe(lowmere)).error).toBe(
      `Hinweis: die Richtlinie sagt nichts von einer Wache \`Lowmere3\`; sie nennt \`Lowmere 3\`, \`Lowmere 4\`; ist \`Lowmere 3\` gemeint?\n${without}`,
    );
  });

  it.each([
    [["compile", policy, "--language", "xx"], "`--language xx` is none of en, de\n"],
    [["compile", policy, "--language=de", "--language=de"], "`--language` is given twice\n"],
    [["compile", policy, "--langauge", "de"], "there is no option `--langauge`; did you mean `--language`?\n"],
    [["schema", policy, "daily", "--language", "de"], "there is no option `--language`\n"],
    [["compile", policy, "other.yaml", "--", "--language", "de"], "`other.yaml` is one argument too many"],
    [["evalute", policy, "--language", "xx"], "there is no command `evalute`; did you mean `evaluate`?\n"],
  ])("is English where the language itself is what is wrong: %j", async (words, said) => {
    expect(await runProgram(words)).toMatchObject({ code: 2, error: expect.stringContaining(said) });
  });

  it("leaves it to English otherwise, with the parent that was meant", async () => {
    const shipped = files.put("shipped.yaml", `${HEAD}extends: common-practice/open-circiut@1\n`);
    const { out } = await runProgram(["compile", shipped]);
    expect(out).toContain("no policy of");
    expect(out).toContain("mend: write `common-practice/open-circuit@1`");
  });

  it.each(["evaluate", "compile", "describe"])(
    "that %s does not speak is refused, with the one that was meant",
    async (command) => {
      const rest = command === "compile" ? [] : [command === "describe" ? "daily" : leaking];
      const near = await runProgram([command, policy, ...rest, "--language", "ed"]);
      expect(near.code).toBe(2);
      expect(near.out).toBe("");
      expect(near.error).toContain("`--language ed` is none of en, de");
      const other = await runProgram([command, policy, ...rest, "--language", "fr"]);
      expect(other.error).toContain("`--language fr` is none of en, de\n");
    },
  );

  it("offers the language that was meant", async () => {
    const { code, error } = await runProgram(["compile", policy, "--language", "DE"]);
    expect(code).toBe(2);
    expect(error).toContain("`--language DE` is none of en, de; did you mean `de`?");
  });
});
