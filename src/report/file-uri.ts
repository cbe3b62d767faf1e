const DRIVE = /^[A-Za-z]:\//;

/**
 * A file name as an RFC 3986 reference: relative where the name is, `file:` where it is absolute, each segment percent-encoded
 * as UTF-8. A backslash counts as a separator.
 */
export function writeFileUri(file: string): string {
  const path = file.replaceAll("\\", "/").replaceAll(/\p{Surrogate}/gu, "\uFFFD");
  if (path.startsWith("//")) return `file:${encodePath(path)}`;
  if (path.startsWith("/")) return `file://${encodePath(path)}`;
  if (DRIVE.test(path)) return `file:///${path.slice(0, 2)}${encodePath(path.slice(2))}`;
  return encodePath(path.replace(/^(?:\.\/+)+/, ""));
}

/** Why: a colon in the first segment, unless encoded, would make it a scheme. */
function encodePath(path: string): string {
  return path.split("/").map(encodeURIComponent).join("/");
}
