/**
 * Liquid water: region 1 of the IAPWS industrial formulation 1997.
 */

/** Specific gas constant of water in the formulation. [kJ/(kg K)] */
const GAS_CONSTANT = 0.461526;

const T_STAR = 1386;
const P_STAR = 16.53;

// Table 2 of the release: Iᵢ, Jᵢ, nᵢ.
const TABLE: readonly (readonly [I: number, J: number, n: number])[] = [
  [0, -2, 0.14632971213167],
  [0, -1, -0.84548187169114],
  [0, 0, -0.3756360367204e1],
  [0, 1, 0.33855169168385e1],
  [0, 2, -0.95791963387872],
  [0, 3, 0.15772038513228],
  [0, 4, -0.16616417199501e-1],
  [0, 5, 0.81214629983568e-3],
  [1, -9, 0.28319080123804e-3],
  [1, -7, -0.60706301565874e-3],
  [1, -1, -0.18990068218419e-1],
  [1, 0, -0.32529748770505e-1],
  [1, 1, -0.21841717175414e-1],
  [1, 3, -0.5283835796993e-4],
  [2, -3, -0.47184321073267e-3],
  [2, 0, -0.30001780793026e-3],
  [2, 1, 0.47661393906987e-4],
  [2, 3, -0.44141845330846e-5],
  [2, 17, -0.72694996297594e-15],
  [3, -4, -0.31679644845054e-4],
  [3, 0, -0.28270797985312e-5],
  [3, 6, -0.85205128120103e-9],
  [4, -5, -0.22425281908e-5],
  [4, -2, -0.65171222895601e-6],
  [4, 10, -0.14341729937924e-12],
  [5, -8, -0.40516996860117e-6],
  [8, -11, -0.12734301741641e-8],
  [8, -6, -0.17424871230634e-9],
  [21, -29, -0.68762131295531e-18],
  [23, -31, 0.14478307828521e-19],
  [29, -38, 0.26335781662795e-22],
  [30, -39, -0.11947622640071e-22],
  [31, -40, 0.18228094581404e-23],
  [32, -41, -0.93537087292458e-25],
];

/** Properties of one state of water or steam. */
export interface WaterState {
  /** Specific volume. [m³/kg] */
  readonly volume: number;
  /** Specific enthalpy. [kJ/kg] */
  readonly enthalpy: number;
  /** Specific internal energy. [kJ/kg] */
  readonly internalEnergy: number;
  /** Specific entropy. [kJ/(kg K)] */
  readonly entropy: number;
  /** Isobaric heat capacity. [kJ/(kg K)] */
  readonly heatCapacity: number;
}

/**
 * Properties of liquid water from its Gibbs energy
 *
 *     g / (R T) = γ = Σ nᵢ (7.1 − π)^Iᵢ (τ − 1.222)^Jᵢ      π = p / 16.53 MPa,  τ = 1386 K / T
 *
 * The range is not looked at: 273.15 K to 623.15 K, from the saturation pressure to 100 MPa.
 *
 * @param p - pressure [MPa]
 * @param T - temperature [K]
 * @returns its properties; enthalpy and entropy count from liquid at the triple point
 * @see IAPWS R7-97(2012), eq. 7 and tables 2 to 4
 */
export function liquidWater(p: number, T: number): WaterState {
  const pi = p / P_STAR;
  const tau = T_STAR / T;
  const a = 7.1 - pi;
  const b = tau - 1.222;
  const powersOfA = powers(a, 32);
  const powersOfB = powers(b, 17);
  const inverses = powers(1 / b, 41);
  let gamma = 0;
  let byPi = 0;
  let byTau = 0;
  let byTauTwice = 0;
  for (const [I, J, n] of TABLE) {
    const term = n * powersOfA[I]! * (J < 0 ? inverses[-J]! : powersOfB[J]!);
    gamma += term;
    byPi -= (term * I) / a;
    byTau += (term * J) / b;
    byTauTwice += (term * J * (J - 1)) / (b * b);
  }
  return stateOf(p, T, pi, tau, { gamma, byPi, byTau, byTauTwice });
}

/** A reduced Gibbs energy and its derivatives. */
export interface GibbsEnergy {
  /** γ. [-] */
  readonly gamma: number;
  /** ∂γ/∂π. [-] */
  readonly byPi: number;
  /** ∂γ/∂τ. [-] */
  readonly byTau: number;
  /** ∂²γ/∂τ². [-] */
  readonly byTauTwice: number;
}

/**
 * Properties that follow from a reduced Gibbs energy γ(π, τ), the same for liquid and steam.
 *
 * @param p - pressure [MPa]
 * @param T - temperature [K]
 * @param pi - reduced pressure [-]
 * @param tau - inverse reduced temperature [-]
 * @param energy - γ and its derivatives there
 * @returns the properties
 * @see IAPWS R7-97(2012), tables 3 and 12
 */
export function stateOf(
  p: number,
  T: number,
  pi: number,
  tau: number,
  energy: GibbsEnergy,
): WaterState {
  const { gamma, byPi, byTau, byTauTwice } = energy;
  const RT = GAS_CONSTANT * T;
  return {
    volume: (RT * pi * byPi) / (1000 * p),
    enthalpy: RT * tau * byTau,
    internalEnergy: RT * (tau * byTau - pi * byPi),
    entropy: GAS_CONSTANT * (tau * byTau - gamma),
    heatCapacity: -GAS_CONSTANT * tau * tau * byTauTwice,
  };
}

/**
 * The whole powers of a number; multiplying is several times quicker than raising each by itself.
 *
 * @param x - the number
 * @param highest - largest exponent wanted
 * @returns x⁰, x¹, … by exponent
 */
export function powers(x: number, highest: number): Float64Array {
  const row = new Float64Array(highest + 1);
  row[0] = 1;
  for (let exponent = 1; exponent <= highest; exponent++) row[exponent] = row[exponent - 1]! * x;
  return row;
}
