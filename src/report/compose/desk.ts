/**
 * What every chapter needs: the input, the figures, and numbers in print units.
 */

import type { Chart } from "../../charts/chart.js";
import type { BrokenDown } from "../../account/account.js";
import { provenanceOf } from "../../account/breakdown.js";
import type { IndicatorId } from "../../account/indicators.js";
import type { Comparison, Range } from "../../compare/compare.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, ProvenanceShares } from "../document.js";
import { FigureDesk, type Noted } from "../figure-desk.js";
import type { ReportInput } from "./input.js";
import { printUnit } from "./names.js";

/** Numbers of one indicator, noted. */
export interface NotedComparison {
  /** The comparison. */
  readonly comparison: Comparison;
  /** Unit as printed. */
  readonly unit: string;
  /** Printed value per value of the comparison. */
  readonly scale: number;
  /** Pigment route. */
  readonly pigment: Noted;
  /** Dye route. */
  readonly dye: Noted;
  /** Dye minus pigment. */
  readonly difference: Noted;
  /** Share saved in percent; absent where no percentage may be printed. */
  readonly saving?: Noted;
}

/** A report in the making. */
export class ReportDesk {
  /** What the report is made of. */
  readonly input: ReportInput;
  /** Numbers noted so far. */
  readonly figures = new FigureDesk();
  readonly #provenance = new Map<string, ProvenanceShares>();
  readonly #noted = new Map<IndicatorId, NotedComparison>();

  /**
   * @param input - what the report is made of
   */
  constructor(input: ReportInput) {
    this.input = input;
  }

  /**
   * Numbers of an indicator on both routes.
   *
   * @param id - the indicator
   * @returns noted numbers; undefined when the indicator is not in the report
   */
  compared(id: IndicatorId): NotedComparison | undefined {
    const known = this.#noted.get(id);
    if (known !== undefined) return known;
    const comparison = this.input.comparisons.get(id);
    if (comparison === undefined) return undefined;
    const { unit, scale } = printUnit(id, comparison.unit, this.input.reference.suffix);
    const scaled = (range: Range): Range => ({
      median: range.median * scale,
      low: range.low * scale,
      high: range.high * scale,
    });
    const saving =
      comparison.saving === undefined
        ? undefined
        : this.figures.range(
            `${id}.saving`,
            {
              median: 100 * comparison.saving.median,
              low: 100 * comparison.saving.low,
              high: 100 * comparison.saving.high,
            },
            "%",
            { digits: 0 },
          );
    const noted: NotedComparison = {
      comparison,
      unit,
      scale,
      pigment: this.figures.range(
        `${id}.pigment`,
        scaled(comparison.pigment),
        unit,
        this.#behind(id, "pigment"),
      ),
      dye: this.figures.range(`${id}.dye`, scaled(comparison.dye), unit, this.#behind(id, "dye")),
      difference: this.figures.range(`${id}.difference`, scaled(comparison.difference), unit),
      ...(saving === undefined ? {} : { saving }),
    };
    this.#noted.set(id, noted);
    return noted;
  }

  /**
   * Yield of pigment in percent of that of dye at which nothing is saved.
   *
   * @param id - the indicator
   * @returns the number; undefined where the dye route takes next to nothing
   */
  breakEven(id: IndicatorId): Noted | undefined {
    const range = this.input.comparisons.get(id)?.breakEvenYield;
    if (range === undefined) return undefined;
    const percent = { median: 100 * range.median, low: 100 * range.low, high: 100 * range.high };
    return this.figures.range(`${id}.break-even-yield`, percent, "%", { digits: 0 });
  }

  /**
   * Reference units that means of an arm are divided by.
   *
   * @param arm - the arm
   * @returns the number of units; both arms have the same unless yields by workflow act
   */
  units(arm: Workflow): number {
    const { units, byArm } = this.input.reference;
    return byArm?.[arm] ?? units;
  }

  /**
   * Means per reference unit in print units.
   *
   * @param id - indicator
   * @param total - total in the account's unit
   * @param arm - the arm whose total it is
   * @returns the mean
   */
  per(id: IndicatorId, total: number, arm: Workflow): number {
    const units = this.units(arm);
    const { scale } = printUnit(
      id,
      this.input.account.program.indicators.get(id)?.unit ?? "",
      this.input.reference.suffix,
    );
    return units === 0 ? NaN : (total * scale) / units;
  }

  /**
   * A figure. The document numbers it, in the order of reading.
   *
   * @param id - id of the block
   * @param title - states quantity and unit
   * @param description - what it shows
   * @param chart - what is drawn
   * @returns the block
   */
  figure(id: string, title: string, description: string, chart: Chart): Block {
    return { kind: "figure", id, title, description, chart };
  }

  /**
   * A figure that cannot be drawn.
   *
   * @param id - id of the block
   * @param title - what it would show
   * @param missing - why it is empty and how to fill it
   * @returns the block
   */
  gap(id: string, title: string, missing: string): Block {
    return { kind: "figure", id, title, description: missing, missing };
  }

  /**
   * Provenance of an indicator over both arms.
   *
   * @param id - the indicator
   * @returns shares adding to 1
   */
  provenance(id: BrokenDown): ProvenanceShares {
    const p = this.shares(id, "pigment");
    const d = this.shares(id, "dye");
    const half = (share: keyof ProvenanceShares): number => (p[share] + d[share]) / 2;
    return {
      measured: half("measured"),
      allocated: half("allocated"),
      modelled: half("modelled"),
      default: half("default"),
    };
  }

  /**
   * Provenance of an indicator on one arm. Every setting behind it is looked at, so that it is asked for once.
   *
   * @param id - the indicator
   * @param arm - the arm
   * @returns shares adding to 1
   */
  shares(id: BrokenDown, arm: Workflow): ProvenanceShares {
    const key = `${id}|${arm}`;
    let found = this.#provenance.get(key);
    if (found === undefined) {
      found = provenanceOf(this.input.account, id, arm);
      this.#provenance.set(key, found);
    }
    return found;
  }

  // Provenance, for the indicators that are broken down.
  #behind(id: IndicatorId, arm: Workflow): { provenance?: ProvenanceShares } {
    if (!this.input.account.parts.has(id)) return {};
    return { provenance: this.shares(id as BrokenDown, arm) };
  }
}
