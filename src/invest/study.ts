/**
 * A study as it is worked out: inputs drawn, flows of every option drawn, all by name.
 */

import type { Drawn, Input } from "./inputs.js";
import type { EffluentTariff } from "./effluent-tariff.js";
import type { OptionText, Tag } from "./schema.js";
import type { Timing } from "./present-value.js";

/** A price over time. */
export interface Price {
  /** Money per unit at its date, in the currency it was given in. */
  readonly price: Input;
  /** What its currency costs in the study's own. */
  readonly exchange: Drawn;
  /** Growth per year; absent where it goes with inflation. */
  readonly growth: Input | undefined;
  /** Whole years from the day of the price to the start. */
  readonly age: number;
}

/** A line of money of an option. */
export interface MoneyLine extends Price {
  /** What is paid for. */
  readonly what: string;
  /** Kind, such as `machine` or `maintenance`. */
  readonly kind: string;
}

/** A line of capital. */
export interface CapitalLine extends MoneyLine {
  /** Year it is paid in. */
  readonly year: number;
  /** Years it serves; only within the study when absent. */
  readonly lasts: number | undefined;
  /** Machine it is for; empty where none is named. */
  readonly machine: string;
  /** Who sees to it. */
  readonly owner: string;
  /** Day it is to be settled by. */
  readonly due: string;
}

/** A yearly line. */
export interface YearlyLine extends MoneyLine {
  /** What it is paid for. */
  readonly per: "year" | "moved-m2" | "moved-kg" | "all-m2";
}

/** Quantities by name. */
export type Quantities = ReadonlyMap<string, Drawn>;

/** Lots that may move under one rule, for an option. */
export interface Moving {
  /** Share of them that may move. */
  readonly share: Input;
  /** Who they are, in words. */
  readonly words: string;
  /** Lots a year. */
  readonly lots: number;
  /** Accepted area a year. [m²] */
  readonly accepted: number;
  /** Running metres a year. [m] */
  readonly length: number;
  /** Mass a year. [kg] */
  readonly mass: number;
  /** Flows that go with them. */
  readonly leaves: Quantities;
  /** Flows that stay behind with machines kept hot. */
  readonly stays: Quantities;
  /** Of what goes, what no machine of the same kind is asked for again on the new route. */
  readonly gone: Quantities;
  /** Flows that come on the new route. */
  readonly comes: Quantities;
  /** Hours by machine that go. */
  readonly leavesHours: Quantities;
  /** Hours by machine that come. */
  readonly comesHours: Quantities;
  /** Of the hours that leave, how busy each month is against the mean of the log. */
  readonly leavesMonths: MonthWeights;
  /** Of the hours that come, the same. */
  readonly comesMonths: MonthWeights;
}

/** By machine: hours of each month as they would be a year over hours of the year; 1 where all months are alike. */
export type MonthWeights = ReadonlyMap<string, Float64Array>;

/** A machine that an option buys. */
export interface AddedMachine {
  /** Hours a year it is staffed. */
  readonly hours: Input;
  /** Share of them it runs or is made ready. */
  readonly availability: Input;
  /** Its speed as a multiple of that of the one it stands beside. */
  readonly speed: Input;
  /** What it takes while kept ready; absent where nothing is said. */
  readonly standby: Standby | undefined;
}

/** What a machine takes while it is kept ready. */
export interface Standby {
  /** Power. [kW] */
  readonly power: Input;
  /** Hours a year. */
  readonly hours: Input;
  /** Flow whose price is paid: `electricity` or `fuel.NAME`. */
  readonly flow: string;
}

/** An option as it is worked out. */
export interface StudyOption {
  /** Its name. */
  readonly name: string;
  /** As written. */
  readonly text: OptionText;
  /** Flows of all lots on their own routes, under the option's plant. */
  readonly all: Quantities;
  /** Hours by machine of all lots. */
  readonly allHours: Quantities;
  /** Of them, how busy each month is against the mean of the log. */
  readonly allMonths: MonthWeights;
  /** Machines it buys, by the machine they stand beside. */
  readonly adds: ReadonlyMap<string, AddedMachine>;
  /** Lots that may move; empty for options that move none. */
  readonly moving: readonly Moving[];
  /** Lines of capital. */
  readonly capital: readonly CapitalLine[];
  /** Yearly lines. */
  readonly yearly: readonly YearlyLine[];
  /** What it is worth at the end. */
  readonly residual: Price | undefined;
  /** Change of the peak demand. [kW] */
  readonly demand: Input | undefined;
  /** Share rejected on the new route. */
  readonly rejects: Input | undefined;
  /** Share of the lots that may move which has moved, year by year. */
  readonly rampup: readonly number[];
}

/** A tariff in force from a year of the study on. */
export interface DatedTariff {
  /** First day. */
  readonly from: string;
  /** The tariff, in its own currency. */
  readonly tariff: EffluentTariff<number>;
  /** What its currency costs in the study's own. */
  readonly exchange: Drawn;
  /** Where it is from. */
  readonly tag: Tag;
  /** Where it is printed. */
  readonly source: string;
}

/** Effluent of a study. */
export interface Effluent {
  /** Tariffs by date. */
  readonly tariffs: readonly DatedTariff[];
  /** Multiple of all rates. */
  readonly level: Input;
  /** Growth per year; absent where it goes with inflation. */
  readonly growth: Input | undefined;
  /** Measured COD today [mg/L]; absent where the modelled one is taken. */
  readonly cod: Input | undefined;
  /** Permit limit for COD at the drain [mg/L]; absent where none is given. */
  readonly codLimit: Input | undefined;
  /** Suspended solids today. [mg/L] */
  readonly solids: Input;
  /** Share of COD left after settlement. */
  readonly settled: Input;
  /** BOD as a share of COD. */
  readonly bodPerCod: Input;
  /** What the load of solids follows. */
  readonly solidsFollow: "cod" | "volume";
}

/** Hours a lot waits beside machines. */
export interface Waits {
  /** Until its batch is full [h]; absent where not given. */
  readonly batching: Input | undefined;
  /** In store between steps [h]; absent where not given. */
  readonly store: Input | undefined;
}

/** Capacity of a machine. */
export interface MachineCapacity {
  /** Hours a year it is staffed. */
  readonly hours: Input;
  /** Share of them it runs or is made ready. */
  readonly availability: Input;
}

/** A study. */
export interface Study {
  /** What is to be decided. */
  readonly title: string;
  /** Currency. */
  readonly currency: string;
  /** Real or nominal money. */
  readonly money: "real" | "nominal";
  /** When in a year its money counts. */
  readonly timing: Timing;
  /** First day of year 1. */
  readonly start: string;
  /** Discount rate. */
  readonly discount: Input;
  /** Inflation; absent where none is given. */
  readonly inflation: Input | undefined;
  /** Rate at which income is put to use. */
  readonly reinvest: number;
  /** Tax; absent where none is counted. */
  readonly tax: { readonly rate: number; readonly years: number; readonly tag: Tag } | undefined;
  /** Growth of the order book. */
  readonly growth: Input;
  /** Order book as a multiple of the logged area. */
  readonly level: Input;
  /** Multiple of all shares that may move; 1, to be turned when looking for its break-even. */
  readonly eligible: Input;
  /** Multiple of all start capital; 1, to be turned when looking for its break-even. */
  readonly outlay: Input;
  /** Prices by flow: `electricity`, `ink.pigment`, `labour`, `cloth`, `demand`, `carbon`. */
  readonly prices: ReadonlyMap<string, Price>;
  /** Shares that are paid for all the same, by kind: `labour`, `electricity`, `heat`, `water`. */
  readonly stays: ReadonlyMap<string, Input>;
  /** Effluent. */
  readonly effluent: Effluent;
  /** Capacity of machines, by name. */
  readonly capacity: ReadonlyMap<string, MachineCapacity>;
  /** What becomes of orders beyond the hours of machines; absent where they are cut for all options alike. */
  readonly beyond: { readonly way: "cut" | "outside"; readonly price: Price } | undefined;
  /** Hours a lot waits beside machines, by route; only what the file gives. */
  readonly waits: Readonly<Record<"dye" | "pigment", Waits>>;
  /** Months of the log that are long enough to judge, in order. */
  readonly months: readonly string[];
  /** Accepted area a year as logged. [m²] */
  readonly accepted: number;
  /** Share rejected of lots on dye routes, as logged. */
  readonly rejected: number;
  /** The option that the report is about. */
  readonly project: StudyOption;
  /** Charge for effluent that may come instead. */
  readonly otherTariff: DatedTariff | undefined;
  /** The option to carry on. */
  readonly carryOn: StudyOption;
  /**
   * The option that improves the wash range, and options that move lots in a house where it is improved already;
   * absent where no option improves it.
   */
  readonly afterWash:
    { readonly wash: StudyOption; readonly options: readonly StudyOption[] } | undefined;
  /** The other options, in the order of the file. */
  readonly options: readonly StudyOption[];
  /** All inputs, by id. */
  readonly inputs: ReadonlyMap<string, Input>;
  /** Number of draws. */
  readonly draws: number;
}
