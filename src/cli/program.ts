export { describeFileError, openStandardInput } from "../files/index.js";
export { findLanguage } from "./find-language.js";
export { loadLanguage } from "./load-language.js";
export { runCommand } from "./run-command.js";
export { runCompile } from "./run-compile.js";
export { runDescribe, runSchema } from "./run-describe.js";
export { runEvaluate } from "./run-evaluate.js";
export { runExplain } from "./run-explain.js";
export { showInPager } from "./show-in-pager.js";
