import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import canonicalize from "canonicalize";
import type { Plan } from "../model/index.js";

/** SHA-256 over the RFC 8785 form of a JSON value; undefined where that form refuses it: a lone surrogate, a number that is none. */
export function digestValue(value: unknown): string | undefined {
  try {
    const text = canonicalize(value);
    return text === undefined ? undefined : `sha256:${bytesToHex(sha256(utf8ToBytes(text)))}`;
  } catch {
    return undefined;
  }
}

/** SHA-256 over the RFC 8785 form of a plan without its digest and positions, so that moving a line changes nothing. */
export function digestPlan(plan: Omit<Plan, "digest" | "positions">): string {
  const digest = digestValue(plan);
  if (digest === undefined) throw new Error("a plan has no canonical form");
  return digest;
}
