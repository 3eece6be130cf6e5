/**
 * Page one beside its table and picture: the decision line, what it hangs on, what is guessed.
 */

import type { BreakEven, WorthSwing } from "../../invest/drivers.js";
import type { Block } from "../document.js";
import { formatChange } from "../../charts/number-format.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, inputValue, paragraph, say, span, standing } from "./desk.js";

/** Inputs named on page one. */
const NAMED = 3;

/** Inputs named that would turn the sign, or that part the median from the values of the file. */
const TURNING = 2;

/** Guessed inputs listed on page one. */
const GUESSED = 1;

/** Share of the width of the draws from which on their median is said to lie beside the values of the file. [-] */
const BESIDE = 0.05;

/**
 * The decision line.
 *
 * @param desk - the report
 * @returns one paragraph
 */
export function decisionLine(desk: InvestDesk): Block {
  const { project, study } = desk.found;
  const { measures, drawn, option } = project;
  const base = desk.number("npv", measures.gain.worth, desk.currency);
  const worth = desk.worth(drawn);
  return paragraph([
    `All inputs drawn but the discount rate, ${option.name} brings a net present value (NPV) of `,
    worth.run,
    ` ${desk.currency} (median; 10 to 90 % of draws ${worth.interval}) at ${formatPercent(study.discount.central, 1)} ${study.money} over ${option.text.life} years: above zero in ${desk.chance(drawn.above)} of draws. At the values of the file it is `,
    base.run,
    `${besideWords(desk)}. ${turningWords(desk)}`,
  ]);
}

// Why the median of the draws is not the value at the inputs of the file.
function besideWords(desk: InvestDesk): string {
  const { swings, project } = desk.found;
  const base = project.measures.gain.worth;
  const [, low, median, high] = project.drawn.spread;
  const apart = median - base;
  if (!(Math.abs(apart) > BESIDE * (high - low))) return "";
  const shift = ({ middle }: WorthSwing): number => middle - base;
  const causes = swings
    .filter((swing) => shift(swing) * apart > 0)
    .sort((a, b) => Math.abs(shift(b)) - Math.abs(shift(a)))
    .slice(0, TURNING)
    .map((swing) => {
      const change = formatChange(shift(swing), Math.min(0, digitsFor(shift(swing))));
      return `${swing.input?.words ?? "the model of the hall"} (${change})`;
    });
  return `; the median is ${apart < 0 ? "lower" : "higher"} because low and high lie unevenly about the values, mainly of ${causes.join(" and ")}`;
}

function turningWords(desk: InvestDesk): string {
  const { measures } = desk.found.project;
  const turns = nearestTurns(desk).slice(0, TURNING);
  if (turns.length === 0)
    return "No single input of the file turns the sign in the range looked at.";
  const words = turns.map(({ input, at = NaN }) => {
    const way = at < input.central ? "falls below" : "rises above";
    const by = formatChange((100 * (at - input.central)) / Math.abs(input.central), 0);
    return `${input.words} ${way} ${inputValue(input, at)} (${standing(input)} ${inputValue(input, input.central)}, ${by}\u00a0%)`;
  });
  return `It ${measures.gain.worth > 0 ? "stops paying" : "begins to pay"} where ${words.join(" or ")}.`;
}

/**
 * Break-evens that turn the sign, those nearest to the file's value as a share of it first. The discount rate, whose
 * break-even is the rate of return, is not among them.
 *
 * @param desk - the report
 * @returns those with a value
 */
export function nearestTurns(desk: InvestDesk): readonly BreakEven[] {
  const far = ({ input, at = NaN }: BreakEven): number =>
    Math.abs(at - input.central) / Math.abs(input.central);
  return desk.found.breakEvens
    .filter(({ at, input }) => at !== undefined && input.central !== 0 && input.id !== "discount")
    .sort((a, b) => far(a) - far(b));
}

/**
 * The inputs that could turn the answer first, and those that are still guessed.
 *
 * @param desk - the report
 * @returns two short paragraphs
 */
export function hangsOn(desk: InvestDesk): readonly Block[] {
  const { swings, project, breakEvens, modelParts } = desk.found;
  const widest = swings.slice(0, NAMED).map(({ input, low, high }) => {
    const worth = `NPV ${span(Math.min(low, high), Math.max(low, high))}`;
    if (input === undefined) {
      const [part] = modelParts;
      return `the model of the hall (${worth}${part === undefined ? "" : `, mostly ${part.heading}`})`;
    }
    const at = breakEvens.find((one) => one.input.id === input.id)?.at;
    return `${input.words} (${worth}; 0 at ${at === undefined ? "none" : inputValue(input, at)})`;
  });
  const guessed = swings
    .flatMap(({ input }) => (input === undefined ? [] : [input]))
    .filter(({ tag }) => tag === "estimate" || tag === "default");
  const more = guessed.length - GUESSED;
  const resting = (project.tags.get("estimate") ?? 0) + (project.tags.get("default") ?? 0);
  return [
    paragraph(
      [
        say("Widest doubts: ", "bold"),
        `${widest.join("; ")}. `,
        say("Still guessed: ", "bold"),
        `${guessed
          .slice(0, GUESSED)
          .map(({ words }) => words)
          .join("; ")}${more > 0 ? `; ${formatNumber(more, 0)} more` : ""}. `,
        `${formatPercent(resting)} of the present value rests on estimates. `,
        say("Internal, forecast: ", "bold"),
        "not for clients or advertising; no financial, tax or engineering advice.",
      ],
      "small",
    ),
  ];
}
