// What a browser would run; it leaves the two verdicts in `answer`.
import { compilePolicy, evaluate } from "tenbar";
import { records, policy as text } from "./case.json";

const { policy } = compilePolicy(text, { file: "case.yaml" });
globalThis.answer = records.map((record) => evaluate(policy, record).verdict).join(" ");
