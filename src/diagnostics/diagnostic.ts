import type { Place } from "../source/index.js";
import type { DiagnosticCode, DiagnosticWords, ParamsOf } from "../words/index.js";

export type { DiagnosticCode, ParamsOf };

/** `error`: the text is not used. `warning`: it is used, and its author should look again. */
export type Severity = "error" | "warning";

/** Something wrong with a text: plain data with everything that a person or an editor needs to show it. */
export interface Diagnostic {
  readonly code: DiagnosticCode;
  readonly severity: Severity;
  readonly message: string;
  readonly file: string;
  /** From 1, as are the columns, which count UTF-16 units. */
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly frame: string;
  readonly found?: string;
  readonly wanted?: string;
  readonly nearest?: string;
  readonly mend?: string;
  readonly params: Readonly<Record<string, string | number | readonly string[]>>;
  readonly related?: readonly {
    readonly message: string;
    readonly file: string;
    readonly line: number;
    readonly column: number;
  }[];
}

/** Another place that belongs to the same mistake. */
export interface RelatedPlace {
  readonly message: string;
  readonly place: Place;
}

/** What the stages report into, so that one run shows every mistake. */
export interface Diagnostics {
  /** The language that is spoken here. */
  readonly words: DiagnosticWords;
  report<C extends DiagnosticCode>(code: C, place: Place, params: ParamsOf<C>, related?: readonly RelatedPlace[]): void;
  readonly hasErrors: boolean;
  /** Sorted by file, position and code; exact repeats are dropped. */
  list(): readonly Diagnostic[];
}
