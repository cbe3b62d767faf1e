/** What makes two findings of different days the same finding. */
export interface FingerprintParts {
  /** Percent-encoded already, since it is that of every finding. */
  readonly policy: string;
  readonly subject: string;
  readonly part: string | undefined;
  /** What asks, for what, and the code, as {@link joinAsked} gives them. */
  readonly asked: string;
  readonly defect: string | undefined;
}

/** Percent-encodes names of the record and joins all parts with `|`. */
export function makeFingerprint({ policy, subject, part, asked, defect }: FingerprintParts): string {
  return `${policy}|${encodeName(subject)}|${encodeName(part)}|${asked}|${encodeName(defect)}`;
}

/** The part of a fingerprint that the policy gives: step, interval or rule, then requirement and code, which stands as it is. */
export function joinAsked(asker: string | undefined, requirement: string | undefined, code: string): string {
  return `${encodeName(asker)}|${encodeName(requirement)}|${code}`;
}

/** Names of which nothing is encoded. Source: RFC 3986, section 2.3. */
const UNRESERVED = /^[A-Za-z0-9._~-]*$/;

/** Why: encodeURIComponent throws on a lone surrogate, which any text of a record may hold. */
export function encodeName(name: string | undefined): string {
  if (name === undefined) return "";
  if (UNRESERVED.test(name)) return name;
  return encodeURIComponent(name.replace(/\p{Surrogate}/gu, "\uFFFD"));
}
