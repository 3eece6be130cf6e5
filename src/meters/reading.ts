/** A reading over a period. */
export interface Reading {
  /** Meter of the plant file. */
  readonly meter: string;
  /** First day. */
  readonly from: string;
  /** Last day. */
  readonly to: string;
  /** Consumption: L of water and effluent, kWh net of gas and electricity, kg of steam; g/L of a sample. */
  readonly amount: number;
  /** Whether it was estimated, wholly or at one end. */
  readonly estimated?: true;
  /** Whether a sample was below the amount, which is then the limit of the method. */
  readonly below?: true;
}
