/** The pointer of a member or key. Source: RFC 6901, section 3. */
export function extendPointer(pointer: string, token: string | number): string {
  return `${pointer}/${String(token).replaceAll("~", "~0").replaceAll("/", "~1")}`;
}

/** The keys and positions that a pointer names one after the other. */
export function splitPointer(pointer: string): readonly string[] {
  return pointer
    .split("/")
    .slice(1)
    .map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** The pointer of what holds this one; the root's is the root. */
export function parentPointer(pointer: string): string {
  return pointer.slice(0, Math.max(pointer.lastIndexOf("/"), 0));
}
