import type { Finding } from "../model/index.js";

/** What a figure rests on, in words. */
export function describeBasis(basis: NonNullable<Finding["basis"]>): string {
  switch (basis.kind) {
    case "common-practice":
      return "common practice, no source";
    case "published": {
      const { source, edition, clause, seen } = basis;
      const parts = [source, edition, clause, seen === "memory" ? "from memory" : seen && "as quoted"];
      return `published: ${parts.filter((part) => part !== undefined).join(", ")}`;
    }
    case "manufacturer":
      return `the manufacturer's instructions${basis.document === undefined ? "" : `: ${basis.document}`}`;
    case "local":
      return `local order: ${basis.order}`;
  }
}
