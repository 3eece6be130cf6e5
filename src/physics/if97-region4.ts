/**
 * The boiling line: region 4 of the IAPWS industrial formulation 1997.
 */

// Table 34 of the release: n₁ to n₁₀.
const N1 = 0.11670521452767e4;
const N2 = -0.72421316703206e6;
const N3 = -0.17073846940092e2;
const N4 = 0.1202082470247e5;
const N5 = -0.32325550322333e7;
const N6 = 0.1491510861353e2;
const N7 = -0.48232657361591e4;
const N8 = 0.40511340542057e6;
const N9 = -0.23855557567849;
const N10 = 0.65017534844798e3;

/**
 * Pressure at which water boils. The range is not looked at: 273.15 K to 647.096 K.
 *
 * @param T - temperature [K]
 * @returns saturation pressure [MPa]
 * @see IAPWS R7-97(2012), eqs. 29 and 30
 */
export function boilingPressure(T: number): number {
  const theta = T + N9 / (T - N10);
  const A = (theta + N1) * theta + N2;
  const B = (N3 * theta + N4) * theta + N5;
  const C = (N6 * theta + N7) * theta + N8;
  return ((2 * C) / (-B + Math.sqrt(B * B - 4 * A * C))) ** 4;
}

/**
 * Temperature at which water boils; the same line, solved for it. The range is not looked at: 611.213 Pa
 * to 22.064 MPa.
 *
 * @param p - pressure [MPa]
 * @returns saturation temperature [K]
 * @see IAPWS R7-97(2012), eqs. 29 and 31
 */
export function boilingTemperature(p: number): number {
  const beta = p ** 0.25;
  const E = (beta + N3) * beta + N6;
  const F = (N1 * beta + N4) * beta + N7;
  const G = (N2 * beta + N5) * beta + N8;
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  return (N10 + D - Math.sqrt((N10 + D) ** 2 - 4 * (N9 + N10 * D))) / 2;
}
