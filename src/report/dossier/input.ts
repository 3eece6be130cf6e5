/**
 * What a dossier is made of.
 */

import type { Indicator, IndicatorId } from "../../account/indicators.js";
import type { Swings } from "../../account/swings.js";
import type { Factor, FactorSet } from "../../factors/factor.js";
import type { FactorUse } from "./uses.js";

/** Factors, and the mill they are looked at in. */
export interface DossierInput {
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Factors shown. */
  readonly shown: readonly Factor[];
  /** Uses by id of the factor, in the mill looked at. */
  readonly uses: ReadonlyMap<string, FactorUse>;
  /** Indicators of that mill, by id. */
  readonly indicators: ReadonlyMap<IndicatorId, Indicator>;
  /** Swings of its savings. */
  readonly swings: ReadonlyMap<IndicatorId, Swings>;
  /** Name of that mill. */
  readonly house: string;
  /** Date of the dossier, ISO 8601. */
  readonly date: string;
  /** Version of the tool. */
  readonly version: string;
}
