/** What makes two findings of different days the same finding. */
export interface FingerprintParts {
  readonly policy: string;
  readonly subject: string;
  readonly part: string | undefined;
  readonly step: string | undefined;
  readonly requirement: string | undefined;
  readonly code: string;
  readonly defect: string | undefined;
}

/** Percent-encodes names of the record and the policy and joins them with `|`; the code stands as it is. */
export function makeFingerprint(parts: FingerprintParts): string {
  const { policy, subject, part, step, requirement, code, defect } = parts;
  return [
    encodeName(policy),
    encodeName(subject),
    encodeName(part ?? ""),
    encodeName(step ?? ""),
    encodeName(requirement ?? ""),
    code,
    encodeName(defect ?? ""),
  ].join("|");
}

/** Names of which nothing is encoded. Source: RFC 3986, section 2.3. */
const UNRESERVED = /^[A-Za-z0-9._~-]*$/;

/** Why: encodeURIComponent throws on a lone surrogate, which any text of a record may hold. */
function encodeName(name: string): string {
  if (UNRESERVED.test(name)) return name;
  return encodeURIComponent(name.replace(/\p{Surrogate}/gu, "\uFFFD"));
}
