/** What can be measured, as policies and plans name it. */
export type QuantityName =
  | "pressure"
  | "duration"
  | "length"
  | "volume"
  | "flow"
  | "temperature"
  | "temperature-difference"
  | "sound-level"
  | "mass-concentration"
  | "fraction"
  | "count";

/** Why a text is no quantity. */
export type QuantityFaultName = "missing" | "unreadable" | "no-unit" | "unknown-unit" | "wrong-dimension" | "too-fine";
