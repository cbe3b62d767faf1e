/** The key of the positions of a parent's requirement, which stands while the adoption that covers it does not apply. */
export function nameAdoptedKey(key: string, adoption: string): string {
  return `${key}@${adoption}`;
}

/**
 * The key of a requirement's positions while the limits of an adoption stand.
 * Why apart from {@link nameAdoptedKey}: an order that is stated again may cover and accept under one id.
 */
export function nameAcceptedKey(key: string, adoption: string): string {
  return `${key}@${adoption}+accept`;
}
