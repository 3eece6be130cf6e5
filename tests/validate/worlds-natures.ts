/**
 * Natures of worlds: truths as the factors say, and truths that are not.
 */

import { type Nature, reshaped, widened } from "./worlds-truth.js";

/** Truths as the factors say. Other natures change one thing of it. */
export const AS_DRAWN: Nature = {
  title: "Truths as the factors say",
  words:
    "Every true value is drawn from the very spread that the report draws from, by other random numbers. So " +
    "coverage near 95 % is no praise of the factors: it holds by construction (94.9 % with 2,000 draws, " +
    "whose quantiles are the ends of the interval). What can spoil it is arithmetic: draws, pairing of the " +
    "arms, the halves common to owners of one default, quantiles, and the split of each amount into lots with " +
    "a logged value and lots without. Lots without a log scatter about the true setting as well, which no " +
    "interval holds; over some hundred lots that is too little to see. Rows hang together: by chance, many " +
    "may err to the same side.",
  spread: ({ spread }) => spread,
  byMachine: "no",
  misread: 0,
};

/** Natures of which a table is made, the factors' own first. */
export const NATURES: readonly Nature[] = [
  AS_DRAWN,
  {
    ...AS_DRAWN,
    title: "Truths 1.5 times as wide",
    words:
      "The doubt of every factor is half as wide again as the factors say, cut where a value is not " +
      "possible. A sum of many such doubts would be covered 81 % of the time, 2 Φ(1.96 / 1.5) − 1.",
    spread: (leaf) => widened(leaf, 1.5),
  },
  {
    ...AS_DRAWN,
    title: "Truths of another shape",
    words:
      "Every factor keeps its 95 % interval and changes its shape: triangles become lognormal, or normal where " +
      "they reach zero; normal and lognormal spreads become uniform.",
    spread: reshaped,
  },
  {
    ...AS_DRAWN,
    title: "Settings of a machine high together",
    words:
      "Any two settings of one machine have a correlation of 0.5, high with high, where the report takes " +
      "them as independent. Some of it adds up, as hot with long; some cancels, as strong with fast.",
    byMachine: "alike",
  },
  {
    ...AS_DRAWN,
    title: "Settings of a machine wasteful together",
    words:
      "As before, but turned so that all of it adds up: where one setting of a machine lies on the side that " +
      "takes more energy, the others tend there too.",
    byMachine: "wasteful",
  },
  {
    ...AS_DRAWN,
    title: "Logged values misread",
    words:
      "All logged values of a column are wrong by the same share, within 5 % in 95 of 100 worlds, where the " +
      "report takes them as they stand.",
    misread: 0.05,
  },
  {
    ...AS_DRAWN,
    title: "Truths as the factors say, with meters of the site",
    words:
      "Meters of water, electricity and gas of the whole site read what the true mill took, lots and what no lot " +
      "asks for, with an error of their own. Intervals are narrower than without meters and have to hold the " +
      "truth as often. Reconciliation is straight in logarithms and takes doubts as normal there, which they " +
      "are not quite.",
    meters: "site",
  },
  {
    ...AS_DRAWN,
    title: "Truths as the factors say, with meters at machines",
    words:
      "Beside the meters of the site, six at machines: water and steam of the range, steam of the steamer, gas " +
      "of a stenter, electricity and water of the printer. Each counts something that no lot asks for.",
    meters: "machines",
  },
];
