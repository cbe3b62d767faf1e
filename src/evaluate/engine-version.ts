/** The version of this package; a test compares it with package.json. */
export const ENGINE_VERSION = "0.1.0";
