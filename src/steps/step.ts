import type { Quantity } from "../numbers/quantity.js";
import type { Amount } from "./amounts.js";
import type { Cloth } from "./cloth.js";
import type { RecipeLine } from "./substances.js";
import type { Term } from "./term.js";

/** Whose number a setting is; lots that share an owner share its draw. */
export type Owner = "world" | "site" | "machine" | "role";

/** A setting of a step: what it is, where it may lie, and whose it is. Its default is a factor of the same id. */
export interface SettingSpec {
  /** What it is, in plain words. */
  readonly words: string;
  /** Unit; `1` for a bare ratio. */
  readonly unit: string;
  /** Physical limits; a value outside is refused, a draw is cut there. */
  readonly limits: readonly [number, number];
  /** Whose number it is. */
  readonly owner: Owner;
}

/** A choice of a step, such as how it is heated. */
export interface ChoiceSpec {
  /** What it decides, in plain words. */
  readonly words: string;
  /** Allowed words. */
  readonly options: readonly string[];
  /** Taken when the plant file says nothing. */
  readonly usual: string;
}

/** Columns of the log that the step may take from lots of this arm. */
export type LoggedColumn = "pickup" | "fixTemp" | "dwell" | "speed" | "liquorRatio" | "baths";

/** What the cloth of a ledger key is like. */
export interface ClothKind {
  /** Bone-dry cloth per conditioned cloth: Σ shareᵢ/(1+Rᵢ). [kg/kg] */
  readonly dryShare: Quantity;
  /** Heat capacity of the bone-dry fibres of one kg of conditioned cloth: Σ shareᵢ cᵢ/(1+Rᵢ). [kJ/(kg K)] */
  readonly heatCapacity: Quantity;
  /** Equilibrium moisture at hall conditions: water per bone-dry cloth. [kg/kg] */
  readonly regain: Quantity;
  /** Heat of wetting from bone dry. [kJ/kg bone dry] */
  readonly wettingHeat: Quantity;
  /** Differential heat of sorption at zero regain, above the heat of evaporation. [kJ/kg water] */
  readonly sorptionHeat: Quantity;
}

/** What a step is told when a route is put together. */
export interface StepContext {
  /** Name of the step in its route: `pretreat`, `fix`. */
  readonly role: string;
  /** Resolves one of the step's own settings, by its short name. */
  readonly set: (name: string) => Quantity;
  /** One of the step's own choices, by its short name. */
  readonly choose: (name: string) => string;
  /** Whether lots of this arm bring the column to this step. */
  readonly takes: (column: LoggedColumn) => boolean;
  /** The cloth's own properties. */
  readonly kind: ClothKind;
  /** Air of the hall. */
  readonly hall: {
    /** [°C] */
    readonly temperature: Quantity;
    /** [kg water / kg dry air] */
    readonly humidity: Quantity;
    /** Air pressure of the site. [bar absolute] */
    readonly pressure: Quantity;
  };
  /** Water as the water works give it. [°C] */
  readonly supplyTemperature: Quantity;
  /** Steam as it reaches the step. */
  readonly steam: {
    /** Specific enthalpy of the saturated steam at main pressure. [kJ/kg] */
    readonly enthalpy: Quantity;
  };
  /** Recipe of a pad, ink or bath: g of substance per unit of liquor, as quantities, by substance. */
  readonly recipe: readonly RecipeLine[];
  /** Water in the ink that a printer lays down. [L/L] */
  readonly inkWater: Quantity;
  /** Whether this arm is the route the lots really took. */
  readonly own: boolean;
  /** Vapour raised by burning the direct-firing fuel, per MJ of net calorific value; 0 for indirect heat. [kg/MJ] */
  readonly burnerVapour: Quantity;
  /** Share of the burner's fuel that is turned into heat (unburnt loss only). [-] */
  readonly burnerEfficiency: Quantity;
}

/** A part of a sum over lots: amount × rate. */
export interface CheckPart {
  /** What the lots ask for. */
  readonly amount: Amount;
  /** Per unit of amount. */
  readonly rate: Quantity;
}

/**
 * What the settings of a step come to, to be held against what its machine can do: a quotient of two sums over
 * the lots. It enters no flow.
 */
export interface StepCheck {
  /** What it is, in plain words. */
  readonly words: string;
  /** Unit of the quotient. */
  readonly unit: string;
  /** Numerator. */
  readonly above: readonly CheckPart[];
  /** Denominator. */
  readonly below: readonly CheckPart[];
  /** What the machine can do, in the same unit; 0 where nobody said. */
  readonly most: Quantity;
}

/** What a step answers. */
export interface StepResult {
  /** Its demands and releases. */
  readonly terms: readonly Term[];
  /** The cloth it hands on. */
  readonly cloth: Cloth;
  /** What its settings come to; absent where nothing is to be checked. */
  readonly checks?: readonly StepCheck[];
}

/** A kind of step: one machine doing one job. */
export interface StepKind {
  /** Trade's word for it, as written in plant files. */
  readonly kind: string;
  /** What it does, in one sentence. */
  readonly words: string;
  /** Its settings by short name; the default of `NAME` is the factor `KIND.NAME`. */
  readonly settings: Readonly<Record<string, SettingSpec>>;
  /** Its choices by short name. */
  readonly choices: Readonly<Record<string, ChoiceSpec>>;
  /** Columns of the log that belong to it, when it is the step they are for. */
  readonly columns: readonly LoggedColumn[];
  /** Puts the step together for one kind of cloth. */
  readonly build: (context: StepContext, cloth: Cloth) => StepResult;
}
