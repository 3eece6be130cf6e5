/** A piece of printing logged as a unit, as read and judged. Absence is never zero. */
export interface Lot {
  /** Name of the lot, unique in all logs read together. */
  readonly lot: string;
  /** Day it was printed, ISO 8601. */
  readonly date: string;
  /** Site; `main` when the column is absent. */
  readonly site: string;
  /** Client, or an empty text. */
  readonly client: string;
  /** Order, or an empty text. */
  readonly order: string;
  /** Fabric as the mill calls it, or an empty text. */
  readonly fabric: string;
  /** Fibres with their shares of the conditioned mass, sorted by share then name; the shares add up to 1. */
  readonly fibre: readonly FibreShare[];
  /** Mass per area. [g/m²] */
  readonly gsm: number;
  /** Width of the cloth. [m] */
  readonly width: number;
  /** Length. [m] */
  readonly length: number;
  /** Length not of first quality. [m] */
  readonly rejected: number | undefined;
  /** Name of the route it took. */
  readonly route: string;
  /** What the lot was for. Only production and reprints may have accepted area. */
  readonly kind: LotKind;
  /** Ink used. [L] */
  readonly ink: number | undefined;
  /** Share of the printed area under full laydown. [-] */
  readonly coverage: number | undefined;
  /** Pick-up of the first pad, liquor per conditioned cloth. [kg/kg] */
  readonly pickup: number | undefined;
  /** Cloth temperature at fixation. [°C] */
  readonly fixTemp: number | undefined;
  /** Time at fixation temperature. [s] */
  readonly dwell: number | undefined;
  /** Fresh water per bath or of the wash. [L/kg] */
  readonly liquorRatio: number | undefined;
  /** Number of baths. */
  readonly baths: number | undefined;
  /** Speed of the fixing machine. [m/min] */
  readonly speed: number | undefined;
  /** Readings taken for this lot alone. */
  readonly readings: LotReadings;
  /** Fastness grades, 1 to 5. */
  readonly fastness: {
    /** Dry rub. */
    readonly rubDry: number | undefined;
    /** Wet rub. */
    readonly rubWet: number | undefined;
    /** Wash. */
    readonly wash: number | undefined;
  };
  /** Lot that this one replaces, or an empty text. */
  readonly reprintOf: string;
  /** Free text, or an empty text. */
  readonly note: string;
  /** Where the row stands. */
  readonly place: {
    /** File as the user named it. */
    readonly file: string;
    /** Line on which the row starts, counted from 1. */
    readonly line: number;
  };
}

/** A fibre and its share of the conditioned mass. */
export interface FibreShare {
  /** Fibre by the trade's word: `cotton`. */
  readonly fibre: string;
  /** Share. [-] */
  readonly share: number;
}

/** What a lot can have been for. */
export const LOT_KINDS = ["production", "reprint", "overhead"] as const;

/** What a lot was for: goods, goods in place of rejected ones, or strike-offs, set-up and cleaning. */
export type LotKind = (typeof LOT_KINDS)[number];

/** Readings of meters that ran for one lot alone. */
export interface LotReadings {
  /** [kWh] */
  readonly electricity: number | undefined;
  /** [L] */
  readonly water: number | undefined;
  /** [kWh, gross or net as the plant file says] */
  readonly gas: number | undefined;
  /** [kg] */
  readonly steam: number | undefined;
}
