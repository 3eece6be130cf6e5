/**
 * Numbers of a report: each is noted with its interval and trace, and comes back as something a text or a
 * cell can print.
 */

import type { Range } from "../compare/compare.js";
import type { Cell, Figure, ProvenanceShares, Run } from "./document.js";
import { digitsFor, formatInterval, formatNumber } from "./format.js";
import type { FigureValue } from "./template.js";

/** More about a figure. */
export interface FigureMore {
  /** What the value is of its draws; a median when left out. */
  readonly of?: Figure["of"];
  /** Shares of provenance. */
  readonly provenance?: ProvenanceShares;
  /** Decimals; from the interval when left out. */
  readonly digits?: number;
}

/** A number noted. */
export interface Noted {
  /** For templates. */
  readonly value: FigureValue;
  /** For cells and paragraphs. */
  readonly run: Run;
  /** Its interval in words, `12 to 41`; empty when it has none. */
  readonly interval: string;
  /** Decimals. */
  readonly digits: number;
}

/** Gathers figures. */
export class FigureDesk {
  readonly #figures: Record<string, Figure> = {};

  /**
   * All figures noted.
   *
   * @returns figures by id
   */
  get figures(): Readonly<Record<string, Figure>> {
    return this.#figures;
  }

  /**
   * Notes a median with its interval.
   *
   * @param id - id, unique in the report
   * @param range - median and interval
   * @param unit - unit as printed
   * @param more - provenance and decimals
   * @returns what texts and cells print
   */
  range(id: string, range: Range, unit: string, more: FigureMore = {}): Noted {
    const digits = more.digits ?? digitsFor(range.median, range.low, range.high);
    return this.#note(id, {
      value: range.median,
      low: range.low,
      high: range.high,
      unit,
      digits,
      of: more.of ?? "median",
      ...extras(more),
    });
  }

  /**
   * Notes a mean or a count without interval.
   *
   * @param id - id, unique in the report
   * @param value - the number
   * @param unit - unit as printed
   * @param more - what it is, and decimals
   * @returns what texts and cells print
   */
  plain(id: string, value: number, unit: string, more: FigureMore = {}): Noted {
    const digits = more.digits ?? digitsFor(value);
    return this.#note(id, { value, unit, digits, of: more.of ?? "mean", ...extras(more) });
  }

  #note(id: string, figure: Figure): Noted {
    if (!Number.isFinite(figure.value)) throw new Error(`Figure ${id} is not a number.`);
    this.#figures[id] = figure;
    const text = formatNumber(figure.value, figure.digits);
    const interval =
      figure.low === undefined || figure.high === undefined
        ? ""
        : formatInterval(figure.low, figure.high, figure.digits);
    return {
      value: { figure: id, text },
      run: { kind: "figure-ref", figure: id, text },
      interval,
      digits: figure.digits,
    };
  }
}

function extras(more: FigureMore): Pick<Figure, "provenance"> {
  return {
    ...(more.provenance === undefined ? {} : { provenance: more.provenance }),
  };
}

/**
 * A cell of text.
 *
 * @param text - the text
 * @param strong - whether it heads its row
 * @returns the cell
 */
export function textCell(text: string, strong = false): Cell {
  return { runs: [{ kind: "text", text }], ...(strong ? { strong } : {}) };
}

/**
 * A cell of a number.
 *
 * @param run - the number, or text that stands for it
 * @returns the cell, flush right
 */
export function numberCell(run: Run | string): Cell {
  return { runs: [typeof run === "string" ? { kind: "text", text: run } : run], align: "right" };
}
