/** Params that any code may carry: what stands there, and the known name closest to it. */
export type SharedParams = {
  readonly found?: string | undefined;
  readonly nearest?: string | undefined;
};

/** Which texts a code has beside its message, and the params that they speak of. */
export interface Says<P, Parts extends "wanted" | "mend" = never> {
  readonly params: P & SharedParams;
  readonly parts: Parts;
}
