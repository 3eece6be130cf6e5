/**
 * How wrong the inputs may be: price of ink against volume, what moves the worth, where it turns.
 */

import type { Block } from "../document.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import {
  type InvestDesk,
  inputValue,
  money,
  paragraph,
  right,
  span,
  standing,
  table,
} from "./desk.js";

/** Inputs shown in the picture of swings. */
const SHOWN = 12;

/** Break-evens shown in the picture. */
const TURNS = 14;

/**
 * The chapter.
 *
 * @param desk - the report
 * @returns figures with their tables
 */
export function turningBlocks(desk: InvestDesk): readonly Block[] {
  return [...inkBlocks(desk), ...swingBlocks(desk), ...breakEvenBlocks(desk)];
}

function inkBlocks(desk: InvestDesk): readonly Block[] {
  const { lines, study, project } = desk.found;
  const ink = study.inputs.get("prices.ink.pigment");
  if (ink === undefined || lines.length === 0) return [];
  const million = study.accepted / 1e6;
  const { level } = study;
  const [zero] = lines;
  const today = zero?.points.find((point) => Math.abs(point.level - 1) < 1e-9);
  const nothing = today?.price;
  return [
    paragraph([
      ...(nothing === undefined
        ? [
            "At the logged order book no price of pigment ink makes the project pay: even ink for nothing would not do.",
          ]
        : [
            "At the logged order book the project breaks even at ",
            desk.number("ink.break-even", nothing, ink.unit).run,
            ` ${ink.unit} of pigment ink; ${inputValue(ink, ink.central)} is what the file says (${standing(ink)}; 10 to 90 % of draws ${span(ink.low, ink.high)}).`,
          ]),
      " Below a line it brings more than the line says. A machine that fills up bends the lines: more orders than it has hours for cannot move.",
    ]),
    {
      kind: "figure",
      id: "ink-volume",
      title: `Price of pigment ink against volume at which ${project.option.name} is worth the same, ${ink.unit} over million m² a year`,
      description: `Lines of equal net present value; in the file ${inputValue(ink, ink.central)} at ${formatNumber(million, 2)} million m² a year.`,
      chart: {
        kind: "worth-line",
        data: {
          across: "accepted area, million m² a year",
          up: `pigment ink, ${ink.unit}`,
          lines: lines.map(({ worth, points }) => ({
            name: worth === 0 ? "NPV 0" : `NPV ${money(worth)}`,
            points: points.map((point) => ({ x: point.level * million, y: point.price })),
          })),
          today: {
            x: [level.low * million, level.central * million, level.high * million],
            y: [ink.low, ink.central, ink.high],
          },
        },
      },
    },
    table(
      "ink-volume-table",
      `Price of pigment ink in ${ink.unit} at which the net present value is as the column says, ${desk.currency}.`,
      ["Million m² a year", ...lines.map(({ worth }) => `NPV ${money(worth)}`)],
      (zero?.points ?? [])
        .map((point, i) => ({ point, i }))
        .filter(({ i }) => i % 4 === 2)
        .map(({ point, i }) => [
          formatNumber(point.level * million, 2),
          ...lines.map(({ points }) => {
            const price = points[i]?.price;
            return right(price === undefined ? "never" : formatNumber(price, 2));
          }),
        ]),
      { behind: true },
    ),
  ];
}

function swingBlocks(desk: InvestDesk): readonly Block[] {
  const { swings, project } = desk.found;
  const base = project.measures.gain.worth;
  const shown = swings.slice(0, SHOWN);
  const words = (input: (typeof swings)[number]["input"]): string =>
    input?.words ?? "model of the hall";
  const end = (input: (typeof swings)[number]["input"], which: "low" | "high"): string =>
    input === undefined ? `its ${which} end` : inputValue(input, input[which]);
  const reach = Math.max(
    ...shown.map(({ low, high }) => Math.max(Math.abs(low - base), Math.abs(high - base))),
  );
  const digits = Math.min(0, digitsFor(reach));
  return [
    {
      kind: "figure",
      id: "npv-swings",
      title: `What changes the net present value of ${project.option.name} (${money(base)} ${desk.currency}), ${desk.currency}`,
      description: shown
        .map(
          ({ input, low, high }) =>
            `${words(input)}: ${money(low - base)} to ${money(high - base)}`,
        )
        .join("; "),
      chart: {
        kind: "swing-bars",
        data: {
          saving: "net present value",
          digits,
          axis: `change of the net present value, ${desk.currency}`,
          signs: ["worth less", "worth more"],
          factors: shown.map(({ input, low, high }) => ({
            factor: words(input),
            low: { label: end(input, "low"), change: low - base },
            high: { label: end(input, "high"), change: high - base },
          })),
        },
      },
    },
    paragraph([
      `The model of the hall, its settings and factors drawn together, shifts the present value of ${desk.found.modelParts
        .slice(0, 3)
        .map((part) => `${part.heading} within ${span(part.low, part.high)}`)
        .join(
          ", ",
        )} ${desk.currency} (10 to 90 % of the draws). Log ink per lot and meter the machines to narrow it: the report of both routes says which measurement is worth most.`,
    ]),
    table(
      "npv-swings-table",
      `Net present value with one input at its 10 and 90 % quantiles, all others at their central values, ${desk.currency}. The model of the hall is drawn as a whole.`,
      ["Input", "From", "Low", "NPV there", "High", "NPV there"],
      swings.map(({ input, low, high }) => [
        words(input),
        input?.tag ?? "model",
        right(end(input, "low")),
        right(money(low)),
        right(end(input, "high")),
        right(money(high)),
      ]),
      { behind: true, widths: [2.4, 0.8, 1.2, 1, 1.2, 1] },
    ),
  ];
}

function breakEvenBlocks(desk: InvestDesk): readonly Block[] {
  const { breakEvens, project, study } = desk.found;
  const shares = project.option.moving.reduce(
    (sum, { share, accepted }) => sum + share.central * accepted,
    0,
  );
  const all = project.option.moving.reduce((sum, { accepted }) => sum + accepted, 0);
  const value = (input: (typeof breakEvens)[number]["input"], at: number): string =>
    input.id === "moves.all" && all > 0
      ? `${formatPercent(mayMove(desk, at) / all)} of dye area may move`
      : inputValue(input, at);
  const sorted = [...breakEvens].sort((a, b) => distance(a) - distance(b));
  return [
    {
      kind: "figure",
      id: "turning-points",
      title: `How wrong each input may be before ${project.option.name} breaks even, percent of its value in the file`,
      description: sorted
        .map(({ input, at }) => `${input.words}: ${at === undefined ? "never" : value(input, at)}`)
        .join("; "),
      chart: {
        kind: "turn-rows",
        data: {
          worth: "NPV",
          rows: sorted
            .filter(({ input, at }) => at !== undefined && input.central !== 0)
            .slice(0, TURNS)
            .map(({ input, at = 0 }) => ({
              name: input.words,
              at: (100 * at) / input.central,
              label: `${value(input, at)}, ${standing(input)} ${value(input, input.central)}`,
            })),
        },
      },
    },
    table(
      "break-evens",
      `Value of each input at which the net present value is 0, all others at their central values. “Never”: not within the range looked at. The discount rate at which it is 0 is the rate of return.`,
      ["Input", "In the file", "Break-even", "Margin", "Within 10 to 90 %", "Looked at"],
      sorted.map(({ input, at, range }) => [
        input.words,
        right(value(input, input.central)),
        right(at === undefined ? "never" : value(input, at)),
        right(
          at === undefined || input.central === 0
            ? "–"
            : `${formatNumber(100 * (at / input.central - 1), 0)}\u00a0%`,
        ),
        at === undefined ? "no" : at >= input.low && at <= input.high ? "yes" : "no",
        right(looked(value(input, range[0]), value(input, range[1]))),
      ]),
      { widths: [2.4, 1.2, 1.2, 0.7, 0.8, 1.6] },
    ),
    paragraph(
      [
        `Prices and shares are turned one at a time; two that are wrong together need less. The mean share that may move is ${formatPercent(all > 0 ? shares / all : 0)} of ${money(all)} m² a year on dye routes; the order book is ${money(study.accepted)} m² accepted a year.`,
      ],
      "small",
    ),
  ];
}

// Both ends, the unit but once.
function looked(low: string, high: string): string {
  const [number = low, ...unit] = low.split("\u00a0");
  return high.endsWith(unit.join("\u00a0")) ? `${number} to ${high}` : `${low} to ${high}`;
}

function mayMove(desk: InvestDesk, times: number): number {
  return desk.found.project.option.moving.reduce(
    (sum, { share, accepted }) => sum + Math.min(1, share.central * times) * accepted,
    0,
  );
}

function distance({
  input,
  at,
}: {
  readonly input: { readonly central: number };
  readonly at: number | undefined;
}): number {
  if (at === undefined) return Infinity;
  return Math.abs(at - input.central) / Math.max(1e-12, Math.abs(input.central));
}
