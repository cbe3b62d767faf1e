export {
  type Bound,
  type BoundKind,
  type IntegerRange,
  marginOfBounds,
  rangeOfBounds,
  satisfiesBounds,
} from "./band.js";
export { isBelowNothing, isNeverBelowNothing } from "./below-nothing.js";
export {
  addSpan,
  type CalendarDate,
  type CalendarSpan,
  compareDates,
  daysBetween,
  formatDate,
  parseCalendarSpan,
  parseDate,
  parseDay,
} from "./calendar.js";
export {
  formatProbability,
  probabilityWithin,
  type Uniform,
  uniformsOfDifference,
  uniformsOfReading,
} from "./confidence.js";
export type { Cut } from "./format-decimal.js";
export { formatQuantity } from "./format-quantity.js";
export { formatDifference, formatRational } from "./format-rational.js";
export { type Instrument, isInRange, isOnDivision, type Span, spanOfDifference, spanOfReading } from "./instrument.js";
export { mendQuantity } from "./mend-quantity.js";
export { type ParsedQuantity, parseQuantity, type QuantityFault } from "./parse-quantity.js";
export { createQuantityReader } from "./quantity-reader.js";
export {
  addRational,
  compareRational,
  isNegativeRational,
  makeRational,
  multiplyRational,
  negateRational,
  type Rational,
  rationalOfQuanta,
  rationalOfQuantity,
  subtractRational,
} from "./rational.js";
export { parseRecordTime, type RecordTime } from "./record-time.js";
export type { Quantity } from "./scan-quantity.js";
export { DIMENSIONS, type Dimension, type Family, findUnit, UNITS, type Unit, unitSymbolsOf } from "./units.js";
export { quantity } from "./write-quantity.js";
