import type { JsonWords, RecordInputWords } from "./json-words.js";

/** What the file system answers, in the words of its error codes (POSIX.1, `errno.h`). */
export type FileErrorCode =
  | "ENOENT"
  | "EISDIR"
  | "ENOTDIR"
  | "EACCES"
  | "EPERM"
  | "ELOOP"
  | "ENAMETOOLONG"
  | "ENOSPC"
  | "EROFS";

/** Why a file cannot be used, as the second half of a sentence whose first is its path. */
export interface FileWords {
  readonly errors: Readonly<Record<FileErrorCode, string>>;
  readonly notOrdinary: string;
  readonly notUtf8: string;
  tooLarge(bytes: number): string;
  readonly outsideFolder: string;
  readonly notShipped: string;
  readonly linkToNothing: string;
  readonly noFolder: string;
  wouldReplace(file: string): string;
  planUnreadable(why: string): string;
  readonly json: JsonWords;
  readonly records: RecordInputWords;
}
