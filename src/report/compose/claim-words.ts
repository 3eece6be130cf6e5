/**
 * Words for the answers of the gates: what was found, and what would mend it.
 */

import type { GateAnswer, GateId } from "../../compare/claims/gates.js";
import { formatNumber, formatPercent } from "../format.js";

/** Words of an answer. */
export interface GateWords {
  /** What was found. */
  readonly found: string;
  /** What would mend it; empty where nothing is amiss. */
  readonly mend: string;
}

/** Names of the gates. */
export const GATE_NAMES: Readonly<Record<GateId, string>> = {
  function: "Same function",
  boundary: "Same boundary",
  sample: "Time and sample",
  coverage: "Measured share",
  meters: "Meters against lots",
  interval: "Interval",
  "trade-offs": "What gets worse",
  audience: "Audience",
  evidence: "Evidence of both routes",
  wording: "Wording",
};

const share = (value: number | undefined): string => formatPercent(value ?? NaN);
const whole = (value: number | undefined): string => formatNumber(value ?? NaN, 0);

const WORDS: Readonly<Record<string, (numbers: readonly number[]) => GateWords>> = {
  "same-function": () => ({ found: "fastness is known for lots of both routes", mend: "" }),
  "fastness-unknown": () => ({
    found: "fastness is not known for both routes, so functional equivalence is not shown",
    mend: "log rub and wash fastness of lots of both routes",
  }),
  "blends-not-equivalent": ([blends, most]) => ({
    found: `${share(blends)} of the area is on routes that colour one fibre of a blend (${share(most)} passes)`,
    mend: "name a route for both fibres in the plant file, or leave blends out",
  }),
  "same-boundary": () => ({ found: "no step that a route has is left out on either", mend: "" }),
  "enough-lots": ([months, lots]) => ({
    found: `${whole(months)} months, at least ${whole(lots)} lots of each route`,
    mend: "",
  }),
  "few-lots": ([months, lots, wantMonths, wantLots]) => ({
    found: `${whole(months)} months and ${whole(lots)} lots of the rarer route (${whole(wantMonths)} months and ${whole(wantLots)} lots pass)`,
    mend: "report on a longer period",
  }),
  "too-few-lots": ([months, lots, wantMonths, wantLots]) => ({
    found: `${whole(months)} months and ${whole(lots)} lots of the rarer route; below ${whole(wantMonths)} months or ${whole(wantLots)} lots nothing is claimed`,
    mend: "report on a longer period, or print lots on both routes",
  }),
  measured: ([least]) => ({
    found: `${share(least)} of the quantity was measured on the less measured route`,
    mend: "",
  }),
  "partly-measured": ([least, pass]) => ({
    found: `${share(least)} of the quantity was measured on the less measured route (${share(pass)} passes)`,
    mend: "meter what “What to measure first” names for this quantity",
  }),
  "modelled-documented": ([least, known]) => ({
    found: `${share(least)} was measured; ${share(known)} rests on the mill's settings or published factors`,
    mend: "meter what “What to measure first” names for this quantity",
  }),
  "not-measured": ([least, conditional, known, enough]) => ({
    found: `${share(least)} was measured (${share(conditional)} is the least) and ${share(known)} rests on the mill's settings or published factors (${share(enough)} is the least)`,
    mend: "meter what “What to measure first” names for this quantity, and give the mill's own settings in the plant file",
  }),
  reconciled: ([gap]) => ({ found: `meters and lots differ by ${share(gap)}`, mend: "" }),
  gap: ([gap, pass]) => ({
    found: `meters and lots differ by ${share(gap)} (${share(pass)} passes)`,
    mend: "find what the meters count beside the lots",
  }),
  "wide-gap": ([gap, most]) => ({
    found: `meters and lots differ by ${share(gap)}, more than ${share(most)}`,
    mend: "find what the meters count beside the lots, or put sub-meters on the machines",
  }),
  "not-reconciled": () => ({
    found: "no meter was set beside the lots for this quantity",
    mend: "name a meter in the plant file and put its readings into meters.csv",
  }),
  saved: ([low, high]) => ({
    found: `the 95 % interval of the share saved, ${share(low)} to ${share(high)}, leaves zero out`,
    mend: "",
  }),
  open: ([low, high]) => ({
    found: `the 95 % interval of the share saved, ${share(low)} to ${share(high)}, holds zero`,
    mend: "narrow the interval with the measurement named as most useful",
  }),
  rises: ([low, high]) => ({
    found: `pigment takes more: the 95 % interval of the share saved is ${share(low)} to ${share(high)}`,
    mend: "nothing; the claim is the wrong way round for these lots",
  }),
  "no-percentage": () => ({
    found: "the dye route takes next to nothing, so no percentage is printed",
    mend: "say the difference instead of a percentage",
  }),
  "rises-named": ([count]) => ({
    found: `${whole(count)} of the quantities watched rise and are named on page one`,
    mend: "",
  }),
  "nothing-rises": () => ({ found: "none of the quantities watched rises", mend: "" }),
  internal: () => ({ found: "for use inside the house", mend: "" }),
  client: () => ({ found: "for a client, with its appendix", mend: "" }),
  reviewed: () => ({ found: "for the public, with a review named in the plant file", mend: "" }),
  "internal-only": () => ({
    found: "a claim of this kind stays inside the house",
    mend: "nothing; keep it for the owner",
  }),
  "no-review": () => ({
    found: "a public comparison asks for a review, and none is named",
    mend: "have it reviewed and name the review in the plant file",
  }),
  "both-routes-printed": ([pigment, dye]) => ({
    found: `${whole(pigment)} pigment and ${whole(dye)} dye lots were printed and measured`,
    mend: "",
  }),
  "counterpart-modelled": ([pigment, dye]) => ({
    found: `one route of every lot is a model; of production lots with a counterpart ${whole(pigment)} pigment and ${whole(dye)} dye lots were printed, but not measured closely enough to stand behind it`,
    mend: "measure lots of both routes",
  }),
  "banned-words": ([count]) => ({
    found: `${whole(count)} phrases that may not be used`,
    mend: "say the quantity instead",
  }),
  "words-clean": () => ({ found: "made from figures alone", mend: "" }),
};

/**
 * Words of an answer.
 *
 * @param answer - answer of a gate
 * @returns what was found and what would mend it
 * @throws Error when the answer has no words, which is a fault of the tool
 */
export function gateWords(answer: GateAnswer): GateWords {
  const { why, numbers } = answer;
  const words = Object.hasOwn(WORDS, why) ? WORDS[why] : undefined;
  if (words === undefined) throw new Error(`The answer ${why} has no words.`);
  return words(numbers);
}
