/** An affine map: x' = a x + c y + e, y' = b x + d y + f, in the order a, b, c, d, e, f. */
export type Matrix = readonly [number, number, number, number, number, number];

/**
 * Maps first by `inner`, then by `outer`.
 *
 * @param outer - map of the surroundings
 * @param inner - map of what stands within
 * @returns both in one
 */
export function compose(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [k, l, m, n, o, p] = inner;
  return [
    a * k + c * l,
    b * k + d * l,
    a * m + c * n,
    b * m + d * n,
    a * o + c * p + e,
    b * o + d * p + f,
  ];
}

/**
 * Reads a list of transformations as SVG writes them.
 *
 * Source: SVG 1.1 (second edition) 7.6, the transform attribute.
 *
 * @param text - for instance `translate(20,5) rotate(-90)`
 * @returns one map
 * @throws Error when a part is not translate, scale, rotate or matrix with its numbers
 */
export function readTransform(text: string): Matrix {
  let rest = text.trim();
  let result: Matrix = [1, 0, 0, 1, 0, 0];
  while (rest !== "") {
    const match = /^([A-Za-z]+)\s*\(([^()]*)\)[\s,]*/.exec(rest);
    const made = match && single(match[1] ?? "", arguments_(match[2] ?? ""));
    if (!made) {
      throw new Error(
        `a drawing has transform="${text}"; expected translate, scale, rotate or matrix with their numbers; correct the drawing`,
      );
    }
    result = compose(result, made);
    rest = rest.slice(match[0].length);
  }
  return result;
}

function arguments_(text: string): readonly number[] {
  const parts = text.trim().split(/[\s,]+/);
  return parts.map((part) => (part === "" ? Number.NaN : Number(part)));
}

function single(name: string, values: readonly number[]): Matrix | undefined {
  if (!values.every(Number.isFinite)) return undefined;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = values;
  const count = values.length;
  if (name === "translate" && (count === 1 || count === 2)) return [1, 0, 0, 1, a, b];
  if (name === "scale" && (count === 1 || count === 2)) return [a, 0, 0, count === 2 ? b : a, 0, 0];
  if (name === "matrix" && count === 6) return [a, b, c, d, e, f];
  if (name === "rotate" && (count === 1 || count === 3)) {
    const angle = (a * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return compose(compose([1, 0, 0, 1, b, c], [cos, sin, -sin, cos, 0, 0]), [1, 0, 0, 1, -b, -c]);
  }
  return undefined;
}
