/** The key of a requirement's positions while an adoption decides which limit stands, or while it does not apply. */
export function nameAdoptedKey(key: string, adoption: string): string {
  return `${key}@${adoption}`;
}
