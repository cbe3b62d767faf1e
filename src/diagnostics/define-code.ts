/** `error`: the text is not used. `warning`: it is used, and its author should look again. */
export type Severity = "error" | "warning";

/** Values that a message speaks of; lists stay lists so that a program can use them. */
export type DiagnosticParams = Readonly<Record<string, string | number | readonly string[] | undefined>>;

/** Params that any code may carry: what stands there, and the known name closest to it. */
export type SharedParams = {
  readonly found?: string | undefined;
  readonly nearest?: string | undefined;
};

/**
 * What one code says. Each text is lower case without a final stop, with the author's own words in backticks.
 * `wanted` says what would have been accepted, `mend` what to do; either may have nothing to say for some params.
 */
export interface DiagnosticDefinition<P> {
  readonly severity: Severity;
  message(params: P): string;
  wanted?(params: P): string | undefined;
  mend?(params: P): string | undefined;
}

/** Ties a code's texts to the type of its params. */
export function defineCode<P extends DiagnosticParams = Record<never, never>>(
  definition: DiagnosticDefinition<P & SharedParams>,
): DiagnosticDefinition<P & SharedParams> {
  return definition;
}
