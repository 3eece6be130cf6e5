/**
 * What a report is made of.
 */

import type { Account } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import type { Swings } from "../../account/swings.js";
import type { Audience } from "../../compare/claims/gates.js";
import type { Comparison } from "../../compare/compare.js";
import type { Scenarios } from "../../compare/scenarios.js";
import type { WorkflowYields } from "../../compare/yields.js";
import type { FactorSet } from "../../factors/factor.js";
import type { RouteGrades } from "../../ledger/fastness.js";
import type { Folded } from "../../ledger/fold-names.js";
import type { LedgerKey } from "../../ledger/key.js";
import type { Group } from "../../ledger/ledger.js";
import type { LogAccount } from "../../log/read-logs.js";
import type { Blindness } from "../../meters/blindness.js";
import type { Calibrated } from "../../meters/calibrate.js";
import type { Outflow } from "../../meters/outflow.js";
import type { MeterMonthSeries } from "../../meters/series.js";
import type { Plant } from "../../plant/plant.js";
import type { ClaimsInput } from "./claims.js";
import type { WorthByIndicator } from "./measurement.js";

/** Reference unit of a report. */
export interface Reference {
  /** `m2`, `kg`, `m` or `total`. */
  readonly per: "m2" | "kg" | "m" | "total";
  /** Number of reference units in the lots compared, as logged. */
  readonly units: number;
  /** Units that means of each arm are divided by, where yield by workflow sets them apart. */
  readonly byArm?: Readonly<Record<"pigment" | "dye", number>>;
  /** As printed after a slash, such as `m²`; empty for totals. */
  readonly suffix: string;
  /** In words, such as `accepted m²`. */
  readonly words: string;
}

/** Everything a report says. */
export interface ReportInput {
  /** The print house. */
  readonly plant: Plant;
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Groups of lots. */
  readonly groups: readonly Group[];
  /** Names of clients and fabrics that were folded into one in the groups. */
  readonly folded?: Folded;
  /** Grades of fastness by route; absent where they were not counted. */
  readonly fastness?: readonly RouteGrades[];
  /** Sample of lots. */
  readonly sample: readonly {
    readonly lot: string;
    readonly key: LedgerKey;
    readonly amounts: readonly number[];
  }[];
  /** Reprints that no reject covers. */
  readonly uncovered: readonly {
    readonly lot: string;
    readonly of: string;
    readonly area: number;
  }[];
  /** The account. */
  readonly account: Account;
  /** Comparisons by indicator, in the order of the report. */
  readonly comparisons: ReadonlyMap<IndicatorId, Comparison>;
  /** Swings by indicator. */
  readonly swings: ReadonlyMap<IndicatorId, Swings>;
  /** Yields by workflow that act in this report; absent when none does. */
  readonly yields?: WorkflowYields;
  /** Counts of the import. */
  readonly log: LogAccount;
  /** Lots read and not wanted by client, site or order. */
  readonly filtered: number;
  /** Lots with readings of their own. */
  readonly withReadings: number;
  /** First and last day of the lots. */
  readonly days: readonly [string, string];
  /** Reference unit. */
  readonly reference: Reference;
  /** Client, site and order the report is about; empty for all. */
  readonly scope: { readonly client: string; readonly site: string; readonly order: string };
  /** For whom; the mill itself when absent. */
  readonly audience?: Audience;
  /** Date of the report. */
  readonly date: string;
  /** Seed of the draws. */
  readonly seed: number;
  /** Meters beside the model; empty when there are none or only part of the lots is reported. */
  readonly meters: readonly MeterMonthSeries[];
  /** What meters corrected; absent where none did. */
  readonly calibrated?: Calibrated;
  /** Comparisons without meters, where meters corrected the model. */
  readonly unmetered?: ReadonlyMap<IndicatorId, Comparison>;
  /** Digest of the readings; absent where none were read. */
  readonly readings?: string;
  /** Effluent, condensate and samples by site; absent where no meter counts them. */
  readonly outflows?: readonly Outflow[];
  /** Meters that could be put in, by what they would narrow; absent where it was not worked out. */
  readonly blindness?: readonly Blindness[];
  /** Why there are no meters. */
  readonly metersMissing: string;
  /** What measurements would be worth; absent where it was not worked out. */
  readonly worth?: WorthByIndicator;
  /** Claims judged; absent where none were asked for. */
  readonly claims?: ClaimsInput;
  /** What-ifs beside the mill; absent where the mill names none. */
  readonly scenarios?: Scenarios;
  /** Version of the tool. */
  readonly version: string;
}
