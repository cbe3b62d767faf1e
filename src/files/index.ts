export { type CodePage, readCodePages } from "./code-pages.js";
export { createFileFinder } from "./find-parent-file.js";
export { parseJson } from "./parse-json.js";
export { type ReadRecord, readRecords } from "./read-records.js";
export { describeFileError, noInput, openStandardInput, readText } from "./read-text.js";
export { readWordPages } from "./word-pages.js";
export { writeText } from "./write-text.js";
