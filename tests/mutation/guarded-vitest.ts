import { describe as plain, test } from "vitest";

export * from "vitest";

type Call = (...given: readonly unknown[]) => unknown;

/**
 * `describe` and what hangs on it, with a failing test in place of a body that throws.
 * Why: vitest calls the body after the file is loaded, and a suite that cannot be put together leaves no test to fail.
 */
function guard<T extends object>(suite: T): T {
  return new Proxy(suite, {
    get: (target, key) => {
      const value: unknown = Reflect.get(target, key);
      return typeof value === "function" ? guard(value) : value;
    },
    apply: (target, self, given: readonly unknown[]) => {
      if (typeof target !== "function") throw new Error("what is called is a function");
      const made: unknown = Reflect.apply(target, self, given.map(guardBody));
      return typeof made === "function" ? guard(made) : made;
    },
  });
}

function guardBody(value: unknown): unknown {
  if (typeof value !== "function") return value;
  // Boundary: the last argument of `describe` is its body.
  const body = value as Call;
  return (...given: readonly unknown[]) => {
    try {
      return body(...given);
    } catch (error) {
      return test("its suite is put together", () => {
        throw error;
      });
    }
  };
}

export const describe = guard(plain);
