import type { FileWords } from "../words/index.js";
import { GERMAN_JSON, GERMAN_RECORD_INPUT } from "./german-json.js";

export const GERMAN_FILES: FileWords = {
  errors: {
    ENOENT: "die Datei gibt es nicht",
    EISDIR: "das ist ein Ordner",
    ENOTDIR: "ein Teil des Pfads ist kein Ordner",
    EACCES: "die Berechtigung dafür fehlt",
    EPERM: "die Berechtigung dafür fehlt",
    ELOOP: "die Verknüpfungen führen im Kreis",
    ENAMETOOLONG: "der Name ist zu lang",
    ENOSPC: "der Datenträger ist voll",
    EROFS: "der Datenträger lässt sich nur lesen",
  },
  notOrdinary: "das ist keine gewöhnliche Datei",
  notUtf8: "das ist kein Text in UTF-8",
  tooLarge: (bytes) => `mehr als ${bytes} Bytes`,
  outsideFolder: "die Datei liegt außerhalb des Ordners der Richtlinie",
  notShipped: "eine Richtlinie dieses Namens wird nicht mitgeliefert",
  linkToNothing: "die Verknüpfung führt ins Leere",
  noFolder: "den Ordner dafür gibt es nicht",
  wouldReplace: (file) => `damit würde \`${file}\` ersetzt`,
  planUnreadable: (why) => `der Plan lässt sich nicht lesen: ${why}`,
  json: GERMAN_JSON,
  records: GERMAN_RECORD_INPUT,
};
