/**
 * What every chapter of the investment report needs: findings, figures, money in print.
 */

import type { DrawnOption } from "../../invest/doubt.js";
import { type Findings, SIDE_DRAWS } from "../../invest/findings.js";
import type { Input } from "../../invest/inputs.js";
import type { Block, Cell, Run } from "../document.js";
import { FigureDesk, type Noted, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import type { InvestInput } from "./input.js";

/** Share of draws below which a chance is printed as a bound. [-] */
const RARE = 0.01;

/** A worth in print: median and both ends, rounded alike. */
export interface Worth extends Noted {
  /** Below it lie 10 % of the draws. */
  readonly low: string;
  /** Below it lie 90 % of the draws. */
  readonly high: string;
}

/** A report in the making. */
export class InvestDesk {
  /** What it is made of. */
  readonly input: InvestInput;
  /** What was found. */
  readonly found: Findings;
  /** Numbers noted so far. */
  readonly figures = new FigureDesk();

  /**
   * @param input - what it is made of
   */
  constructor(input: InvestInput) {
    this.input = input;
    this.found = input.findings;
  }

  /**
   * Currency of the study.
   *
   * @returns its code
   */
  get currency(): string {
    return this.found.study.currency;
  }

  /**
   * Net present value of an option in all worlds, with what 10 to 90 % of the draws bring.
   *
   * @param drawn - the option
   * @returns median and interval, rounded the same wherever it is printed
   */
  worth(drawn: DrawnOption): Worth {
    const [, low, median, high] = drawn.spread;
    const id = `worth.${drawn.option.name}`;
    const noted = this.figures.range(id, { median, low, high }, this.currency);
    const end = (value: number): string => formatNumber(value, noted.digits);
    return { ...noted, low: end(low), high: end(high) };
  }

  /**
   * Share of draws in print, with one bound for what is rare wherever it stands: no tighter than side questions, which
   * are drawn less often, can show.
   *
   * @param count - draws
   * @param of - of how many; all when absent
   * @returns in whole percent, never 0 or 100
   */
  chance(count: number, of: number = this.found.study.draws): string {
    const least = Math.max(RARE, Math.ceil(300 / Math.min(of, SIDE_DRAWS)) / 100);
    const share = count / of;
    if (share < least) return `<\u00a0${formatPercent(least)}`;
    if (share > 1 - least) return `>\u00a0${formatPercent(1 - least)}`;
    return formatPercent(share);
  }

  /**
   * A number without interval.
   *
   * @param id - its id
   * @param value - the number
   * @param unit - unit as printed
   * @param digits - decimals
   * @returns the number noted
   */
  number(id: string, value: number, unit: string, digits?: number): Noted {
    return this.figures.plain(id, value, unit, digits === undefined ? {} : { digits });
  }
}

/**
 * Money to three digits.
 *
 * @param value - money
 * @returns in print
 */
export function money(value: number): string {
  return Number.isFinite(value) ? formatNumber(value, digitsFor(value)) : "never";
}

/**
 * A span in print, both ends with the digits of its width.
 *
 * @param low - lower end
 * @param high - upper end
 * @returns such as `−12 000 to 41 000`
 */
export function span(low: number, high: number): string {
  const digits = digitsFor((low + high) / 2, low, high);
  return `${formatNumber(low, digits)} to ${formatNumber(high, digits)}`;
}

/**
 * Years in print.
 *
 * @param years - years; undefined for never
 * @returns such as `4.2 years`
 */
export function years(years: number | undefined): string {
  return years === undefined ? "not within its life" : `${formatNumber(years, 1)} years`;
}

/**
 * An input's value in print.
 *
 * @param input - the input
 * @param value - a value of it
 * @returns the number with its unit; shares and rates in percent
 */
export function inputValue(input: Pick<Input, "unit" | "id">, value: number): string {
  if (isPercent(input)) return `${formatNumber(100 * value, digitsFor(100 * value))}\u00a0%`;
  const unit = input.unit === "1" ? " times" : `\u00a0${input.unit}`;
  return `${formatNumber(value, digitsFor(value))}${unit}`;
}

const STANDING: Readonly<Record<Input["tag"], string>> = {
  invoice: "paid",
  meter: "read",
  quote: "offered",
  estimate: "guessed",
  default: "taken",
};

/**
 * What a value of the file is, in a word: a quote is an offer and nothing that is paid today.
 *
 * @param input - the input
 * @returns such as `offered`
 */
export function standing(input: Pick<Input, "tag">): string {
  return STANDING[input.tag];
}

/**
 * What 10 to 90 % of the draws of an input hold.
 *
 * @param input - the input
 * @returns such as `12.4 EUR/L to 14.3 EUR/L`; `fixed` where it has no doubt
 */
export function inputSpan(input: Input): string {
  return input.low === input.high
    ? "fixed"
    : `${inputValue(input, input.low)} to ${inputValue(input, input.high)}`;
}

function isPercent({ unit, id }: Pick<Input, "unit" | "id">): boolean {
  return (
    unit === "a year" ||
    (unit === "1" && !/^(orders\.level|moves\.all|outlay|effluent\.level)$|\.speed$/.test(id))
  );
}

/**
 * A run of text.
 *
 * @param text - the text
 * @param style - its style
 * @returns the run
 */
export function say(text: string, style?: "bold" | "italic"): Run {
  return { kind: "text", text, ...(style === undefined ? {} : { style }) };
}

/**
 * A paragraph.
 *
 * @param runs - texts and numbers
 * @param tone - lead or small
 * @returns the block
 */
export function paragraph(runs: readonly (Run | string)[], tone?: "lead" | "small"): Block {
  return {
    kind: "paragraph",
    runs: runs.map((run) => (typeof run === "string" ? say(run) : run)),
    ...(tone === undefined ? {} : { tone }),
  };
}

/** How a table is set. */
export interface TableLook {
  /** Relative widths of its columns. */
  readonly widths?: readonly number[];
  /** Whether it holds the data behind a chart. */
  readonly behind?: boolean;
}

/**
 * A table.
 *
 * @param id - its id
 * @param caption - what it shows
 * @param head - headings; those after the first are flush right where their columns are
 * @param rows - cells, texts among them
 * @param look - widths, and whether it stands behind a chart
 * @returns the block
 */
export function table(
  id: string,
  caption: string,
  head: readonly string[],
  rows: readonly (readonly (Cell | string)[])[],
  look: TableLook = {},
): Block {
  return {
    kind: "table",
    id,
    caption,
    head: head.map((text) => textCell(text, true)),
    rows: rows.map((row) =>
      row.map((cell, i) => (typeof cell === "string" ? textCell(cell, i === 0) : cell)),
    ),
    ...look,
  };
}

/**
 * A cell flush right.
 *
 * @param content - text or number
 * @returns the cell
 */
export function right(content: Run | string): Cell {
  return { runs: [typeof content === "string" ? say(content) : content], align: "right" };
}
