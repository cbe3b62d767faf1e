/** A word and a colon with something other than a blank behind it; a no-break space is not a blank in YAML. */
const KEY_WITHOUT_SPACE = /^([A-Za-z][\w-]*):(?=[^ \t\r\n])/;

/** The key of `key:value`, which YAML reads as one text. */
export function findKeyWithoutSpace(text: string): string | undefined {
  return KEY_WITHOUT_SPACE.exec(text)?.[1];
}
