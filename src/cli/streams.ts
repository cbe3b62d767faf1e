/** What a command may know of the world: its streams, its screen, the day. */
export interface Streams {
  /** Writes to standard output; false where nobody reads any more. */
  readonly out: (text: string) => Promise<boolean>;
  readonly error: (text: string) => void;
  /** Shows a long text on the screen, page by page; false where that cannot be done, and nothing was shown. */
  readonly page?: (text: string) => Promise<boolean>;
  readonly input: AsyncIterable<Uint8Array>;
  /** Whether standard output is a screen. */
  readonly isTerminal: boolean;
  /** Whether the stream of errors is one. */
  readonly isErrorTerminal: boolean;
  readonly columns: number | undefined;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** The day of the caller's clock, `2026-04-01`. */
  readonly today: string;
}

/** 0: nothing to act on; 1: something was found; 2: something could not be done. */
export type ExitCode = 0 | 1 | 2;
