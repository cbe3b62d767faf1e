import {
  addRational,
  type Bound,
  compareRational,
  formatProbability,
  makeRational,
  negateRational,
  probabilityWithin,
  type Rational,
  type Uniform,
} from "../quantities/index.js";

const ZERO = makeRational(0n);

/**
 * The probability that the true value conforms, cut to four decimals: the least of the instruments that may have been read;
 * nothing where one of them does not state its largest error.
 *
 * @param isSize whether the bounds speak of the size of the value, whichever way it went
 */
export function describeConfidence(
  candidates: readonly (readonly Uniform[] | undefined)[],
  bounds: readonly Bound[] | undefined,
  isSize: boolean,
): number | undefined {
  const known = candidates.filter((uniforms) => uniforms !== undefined);
  if (bounds === undefined || known.length === 0 || known.length < candidates.length) return undefined;
  const least = known
    .map((uniforms) => (isSize ? probabilityOfSize(uniforms, bounds) : probabilityWithin(uniforms, bounds)))
    .reduce((one, other) => (compareRational(other, one) === -1 ? other : one));
  return formatProbability(least);
}

/** The value itself where it is not negative, and its opposite where it is. */
function probabilityOfSize(uniforms: readonly Uniform[], bounds: readonly Bound[]): Rational {
  const opposite = uniforms.map(({ from, to }) => ({ from: negateRational(to), to: negateRational(from) }));
  return addRational(
    probabilityWithin(uniforms, [...bounds, { kind: "at-least", limit: ZERO }]),
    probabilityWithin(opposite, [...bounds, { kind: "above", limit: ZERO }]),
  );
}
