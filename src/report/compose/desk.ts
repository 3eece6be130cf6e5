/**
 * What every chapter needs: the input, the figures, and numbers in print units.
 */

import { BROKEN_DOWN, type BrokenDown } from "../../account/account.js";
import { provenanceOf } from "../../account/breakdown.js";
import type { IndicatorId } from "../../account/indicators.js";
import { type TraceLine, tracesOf } from "../../account/trace.js";
import type { Comparison, Range } from "../../compare/compare.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, Drawing, FigureTerm, ProvenanceShares } from "../document.js";
import { FigureDesk, type Noted } from "../figure-desk.js";
import type { ReportInput } from "./input.js";
import { printUnit } from "./names.js";

/** Terms kept in the trace of a figure. */
const TRACE_LINES = 10;

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
  #number = 0;
  readonly #traces = new Map<string, readonly TraceLine[]>();
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
   * Means per reference unit in print units.
   *
   * @param id - indicator
   * @param total - total in the account's unit
   * @param units - reference units; those of the report when left out
   * @returns value and unit
   */
  per(id: IndicatorId, total: number, units = this.input.reference.units): number {
    const { scale } = printUnit(
      id,
      this.input.account.program.indicators.get(id)?.unit ?? "",
      this.input.reference.suffix,
    );
    return units === 0 ? NaN : (total * scale) / units;
  }

  /**
   * A numbered figure.
   *
   * @param id - id of the block
   * @param title - states quantity and unit
   * @param description - what it shows
   * @param drawing - the picture
   * @returns the block
   */
  figure(id: string, title: string, description: string, drawing: Drawing): Block {
    this.#number += 1;
    return { kind: "figure", id, title: `Figure ${this.#number}. ${title}`, description, drawing };
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
    this.#number += 1;
    return {
      kind: "figure",
      id,
      title: `Figure ${this.#number}. ${title}`,
      description: missing,
      missing,
    };
  }

  /**
   * Provenance of an indicator over both arms.
   *
   * @param id - the indicator
   * @returns shares adding to 1
   */
  provenance(id: BrokenDown): ProvenanceShares {
    const p = provenanceOf(this.input.account, id, "pigment");
    const d = provenanceOf(this.input.account, id, "dye");
    const modelled = (p.modelled + d.modelled) / 2;
    return { measured: 0, allocated: 0, modelled, default: 1 - modelled };
  }

  // All traces come from one pass over the draws, when the first is asked for.
  #trace(id: BrokenDown, arm: Workflow): readonly TraceLine[] {
    if (this.#traces.size === 0) {
      const wanted = BROKEN_DOWN.flatMap((broken) =>
        (["pigment", "dye"] as const).map((side) => ({ id: broken, arm: side })),
      );
      const lines = tracesOf(this.input.account, wanted, TRACE_LINES);
      wanted.forEach((one, i) => this.#traces.set(`${one.id}|${one.arm}`, lines[i] ?? []));
    }
    return this.#traces.get(`${id}|${arm}`) ?? [];
  }

  // Provenance and trace, for the indicators that are broken down.
  #behind(
    id: IndicatorId,
    arm: "pigment" | "dye",
  ): { provenance?: ProvenanceShares; terms?: readonly FigureTerm[] } {
    const { account, reference } = this.input;
    if (!account.parts.has(id as BrokenDown)) return {};
    const broken = id as BrokenDown;
    const { scale } = printUnit(
      id,
      account.program.indicators.get(id)?.unit ?? "",
      reference.suffix,
    );
    const terms = this.#trace(broken, arm).map(({ mean: _mean, ...line }): FigureTerm => ({
      ...line,
      median: (line.median * scale) / reference.units,
      low: (line.low * scale) / reference.units,
      high: (line.high * scale) / reference.units,
    }));
    return { provenance: provenanceOf(account, broken, arm), terms };
  }
}
