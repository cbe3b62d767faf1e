import { ENGLISH_JSON, ENGLISH_RECORD_INPUT } from "./english-json.js";
import type { FileWords } from "./file-words.js";

/** What is said of files where no other language is asked for. */
export const ENGLISH_FILES: FileWords = {
  errors: {
    ENOENT: "there is no such file",
    EISDIR: "it is a folder",
    ENOTDIR: "part of its path is no folder",
    EACCES: "there is no permission to use it",
    EPERM: "there is no permission to use it",
    ELOOP: "its links go round in a circle",
    ENAMETOOLONG: "its name is too long",
    ENOSPC: "the disk is full",
    EROFS: "the disk can only be read",
  },
  notOrdinary: "it is no ordinary file",
  notUtf8: "it is not UTF-8 text",
  tooLarge: (bytes) => `it has more than ${bytes} bytes`,
  outsideFolder: "it lies outside the policy's folder",
  notShipped: "no policy of this name is shipped",
  linkToNothing: "its link leads to no file",
  noFolder: "its folder does not exist",
  wouldReplace: (file) => `it would replace \`${file}\``,
  planUnreadable: (why) => `the plan cannot be read: ${why}`,
  json: ENGLISH_JSON,
  records: ENGLISH_RECORD_INPUT,
};
