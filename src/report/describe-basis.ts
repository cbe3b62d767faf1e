import type { Finding } from "../model/index.js";
import type { BasisWords } from "../words/index.js";

/** What a figure rests on, in words. */
export function describeBasis(basis: NonNullable<Finding["basis"]>, words: BasisWords): string {
  switch (basis.kind) {
    case "common-practice":
      return words.commonPractice;
    case "published": {
      const { source, edition, clause, seen } = basis;
      const parts = [source, edition, clause, seen === "memory" ? words.fromMemory : seen && words.asQuoted];
      return words.published(parts.filter((part) => part !== undefined));
    }
    case "manufacturer":
      return words.manufacturer + (basis.document === undefined ? "" : `: ${basis.document}`);
    case "local":
      return words.localOrder(basis.order);
  }
}
