/**
 * Words of the report that a reader outside the trade may not know.
 */

import type { Block } from "../document.js";
import { textCell } from "../figure-desk.js";

const WORDS: readonly (readonly [string, string])[] = [
  [
    "lot",
    "Cloth of one design and fabric that goes through the house in one go; one row of the log.",
  ],
  [
    "route, arm",
    "The list of machines a lot goes through. Each lot is worked out on two of them, the arms: pigment with heat fixation, and dye with steam and wash.",
  ],
  ["accepted m²", "Printed area less what was rejected; reprints count for the area they replace."],
  [
    "draw, paired",
    "All uncertain numbers are drawn thousands of times from their ranges. Paired: in one draw both arms see the same value of everything they share.",
  ],
  [
    "median, mean",
    "The middle draw, and the average of all draws. Means add up over steps and lots; medians do not.",
  ],
  [
    "95 % interval",
    "The middle 95 % of draws: doubt about settings and factors, not scatter from lot to lot.",
  ],
  [
    "saved",
    "What dye takes less what pigment takes, as a share of what dye takes, on the same lots; below zero pigment takes more.",
  ],
  ["at the fence", "Where a flow enters or leaves the mill: meters, fuel, drain and stack."],
  ["COD", "Chemical oxygen demand: oxygen that would burn what is dissolved in the effluent."],
  [
    "calender",
    "A heated cylinder that fixes pigment by contact, cloth and protecting paper pressed against it.",
  ],
  ["stenter", "A long hot-air dryer in which the cloth is held at both edges."],
  [
    "pad, pick-up",
    "A trough and nip that put liquor on cloth; pick-up is the liquor left on it as a share of its mass.",
  ],
  ["laydown", "Ink put on the cloth, mL per printed m²."],
  ["conditioned cloth", "Cloth with the moisture it holds in the air of the hall."],
  [
    "location-based, market-based",
    "Two ways to count electricity: by the grid of the place, or by the supplier and contract. They are never added.",
  ],
  [
    "measured, allocated",
    "From a reading of the lot or a meter; from a meter shared between lots.",
  ],
  [
    "modelled, default",
    "Worked out with the mill’s own settings; worked out with shipped factors.",
  ],
];

/**
 * The glossary.
 *
 * @returns a table of words
 */
export function glossary(): Block {
  return {
    kind: "table",
    id: "glossary",
    caption: "Words used in this report.",
    head: [textCell("Word"), textCell("What it means here")],
    rows: WORDS.map(([word, meaning]) => [textCell(word, true), textCell(meaning)]),
    widths: [1.6, 6],
  };
}
