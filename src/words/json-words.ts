/** What JSON may want at a place of its text. */
export type WantedInJson = "value" | "value-or-end" | "key" | "key-or-end" | "colon" | "nothing";

/** Why a text is no JSON, or JSON that is not taken. */
export interface JsonWords {
  readonly wanted: Readonly<Record<WantedInJson, string>>;
  /** Wanted behind a member; `closing` is the bracket that would end the list or the object. */
  commaOr(closing: string): string;
  unwanted(found: string, wanted: string): string;
  commaBefore(closing: string): string;
  readonly endsEarly: string;
  readonly endlessText: string;
  readonly controlCharacter: string;
  badEscape(sequence: string): string;
  readonly singleQuote: string;
  readonly noJson: string;
  tooDeep(levels: number): string;
  repeatedKey(key: string): string;
}

/** Why records cannot be had from an input. */
export interface RecordInputWords {
  lineTooLong(mebibytes: number): string;
  readonly endlessLine: string;
  /** A JSON document over many lines. */
  readonly documentTooLarge: string;
  readonly documentTooLong: string;
}
