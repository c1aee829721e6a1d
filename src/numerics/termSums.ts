/** Sums of terms times coefficients at many places at once, the terms of each place one behind the other. */

/** @param terms by place, then by term @param into one entry a place */
export function sumTermsInto(into: Float64Array, terms: Float64Array, coefficients: Float64Array): void {
  into.fill(0);
  addTermsInto(into, terms, coefficients);
}

/**
 * The same added to what is there: one by one in their order, as in a plain loop; several in one go through the places only save
 * reading and writing.
 */
export function addTermsInto(into: Float64Array, terms: Float64Array, coefficients: Float64Array): void {
  const count = coefficients.length;
  let from = 0;
  for (; from + 6 <= count; from += 6) addSix(into, terms, coefficients, from);
  for (; from + 3 <= count; from += 3) addThree(into, terms, coefficients, from);
  for (; from < count; from++) addOne(into, terms, coefficients, from);
}

function addOne(into: Float64Array, terms: Float64Array, coefficients: Float64Array, from: number): void {
  const a = coefficients[from]!;
  for (let place = 0, at = from; place < into.length; place++, at += coefficients.length) {
    into[place] = into[place]! + a * terms[at]!;
  }
}

function addThree(into: Float64Array, terms: Float64Array, coefficients: Float64Array, from: number): void {
  const [a, b, c] = [coefficients[from]!, coefficients[from + 1]!, coefficients[from + 2]!];
  for (let place = 0, at = from; place < into.length; place++, at += coefficients.length) {
    into[place] = into[place]! + a * terms[at]! + b * terms[at + 1]! + c * terms[at + 2]!;
  }
}

function addSix(into: Float64Array, terms: Float64Array, coefficients: Float64Array, from: number): void {
  const [a, b, c] = [coefficients[from]!, coefficients[from + 1]!, coefficients[from + 2]!];
  const [d, e, f] = [coefficients[from + 3]!, coefficients[from + 4]!, coefficients[from + 5]!];
  for (let place = 0, at = from; place < into.length; place++, at += coefficients.length) {
    into[place] =
      into[place]! +
      a * terms[at]! +
      b * terms[at + 1]! +
      c * terms[at + 2]! +
      d * terms[at + 3]! +
      e * terms[at + 4]! +
      f * terms[at + 5]!;
  }
}
