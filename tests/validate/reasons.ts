/** Why something of ours lies beyond a published range, wholly or in part. Written by hand, one by one. */

/** What the difference rests on. */
export type Rests = "range" | "ends" | "ours";

/** What each of them says. */
export const RESTS: Readonly<Record<Rests, string>> = {
  range: "the published figure covers something else",
  ends: "only a poorly or well run hall, or very light or heavy cloth, goes beyond",
  ours: "a default of ours is in doubt, not the range",
};

/** A reason. */
export interface Reason {
  /** What it rests on. */
  readonly rests: Rests;
  /** In plain words. */
  readonly words: string;
}

const NO_METER =
  "No metered figure for the wash of prints was found, and published ones differ tenfold, so the shipped 25 L/kg, 20 for acid and 15 for disperse dye, are estimates between them.";

const BY_THE_HOUR =
  "Air, casing losses and fans go by the hour, so by the metre, and weigh most per kilogram on light cloth.";

const SLOW_PRINTER =
  "The range is of a rotary machine at tens of metres a minute. An ink-jet printer of 200 m²/h with a dryer of its own is slow, and its power goes by area: on light cloth it alone takes about as much as the upper end.";

/** Reasons by range and what is set beside it. */
export const REASONS: Readonly<Record<string, Reason>> = {
  "bat-w-dye-cont/wash": {
    rests: "ours",
    words: `${NO_METER} The range is for dyeing, where no thickener and little urea has to be washed off, and ours counts the water for steam and softening too. The well run wash lies inside.`,
  },
  "bat-w-wash-syn/wash": {
    rests: "ours",
    words: `${NO_METER} As usual, polyester lies inside. Polyamide comes to just above: it is printed with acid dye, of which a little more has to be washed off. The poorly run wash is set to the same 110 L/kg for all classes of dye, for want of a figure for each.`,
  },
  "bat-w-prep-comb/prepare": {
    rests: "ends",
    words:
      "As usual it lies inside. Poorly and well run are the ends of our own estimate, which reach further to both sides.",
  },
  "wash-cont-reactive/wash": {
    rests: "ours",
    words: `${NO_METER} The range is for well run washing after dyeing; a print holds thickener besides. The well run wash is set to its lower end.`,
  },
  "gen-print-cotton/print-wash": {
    rests: "range",
    words:
      "The table does not say whether washing after printing is in the figure, nor with what dye. Well run, ours lies inside; as usual it is twice the upper end, for the wash alone takes 25 L/kg.",
  },
  "gen-print-cotton/pigment": {
    rests: "range",
    words:
      "A pigment print is not washed: only pad, belt and heads are rinsed. The table seems to hold at least some washing of cloth.",
  },
  "us-print-afterwash/wash": {
    rests: "ends",
    words:
      "The poorly run wash is set to about this very figure, and the water for its steam and softening comes on top.",
  },
  "us-woven-simple/route": {
    rests: "ends",
    words:
      "Only the well run route on heavy cloth comes to just below the lowest of the mills, and those prepared their cloth as well.",
  },
  "us-woven-simple/pigment": {
    rests: "range",
    words:
      "The mills of the survey scoured, dyed and washed. A pigment print is washed nowhere on its route.",
  },
  "cn-woven/route": {
    rests: "ends",
    words:
      "Only the poorly run hall goes above, on light cloth: a wash of 110 L/kg, and belt water that goes by area.",
  },
  "bat-e-thermal/dye": {
    rests: "ends",
    words: `Only the poorly run hall goes above, by a hair and on the lightest cloth. ${BY_THE_HOUR}`,
  },
  "bat-e-thermal/stenter": {
    rests: "ends",
    words: `Only the poorly run hall goes above, on light cloth. ${BY_THE_HOUR} The range is of yearly averages over all cloth of a plant.`,
  },
  "bat-e-thermal/finished": {
    rests: "ends",
    words: `Three passes through hot air, where the reference document of 2003 counts 2.5 on average. As usual only light cloth goes above. ${BY_THE_HOUR}`,
  },
  "ct-dry-stenter/pad": {
    rests: "ends",
    words: `As usual it lies inside on all fabrics; the poorly run hall goes above on light cloth. ${BY_THE_HOUR}`,
  },
  "ct-dry-stenter/wash": {
    rests: "ends",
    words: `As usual it lies inside on all fabrics; the poorly run hall goes above on light cloth. ${BY_THE_HOUR} Well run, with half of the exhaust heat given back, heavy cloth comes to just below; such exchangers were rare in 1997.`,
  },
  "ct-set-stenter/stenter": {
    rests: "ends",
    words: `As usual, cloth of medium weight lies inside. ${BY_THE_HOUR} Heavy cloth comes below: curing at 160 °C takes less than setting, which is done some 30 °C hotter.`,
  },
  "ct-set-stenter/finish": {
    rests: "ends",
    words: `As usual it lies inside on all fabrics. ${BY_THE_HOUR} Setting is done dry; this pass dries as well.`,
  },
  "ct-set-stenter/oven": {
    rests: "ends",
    words: `As usual, cloth of medium weight lies inside. ${BY_THE_HOUR} Heavy cloth comes below: curing at 160 °C takes less than setting, which is done some 30 °C hotter.`,
  },
  "ct-set-stenter/calender": {
    rests: "range",
    words:
      "A calender heats by contact and moves no air, so it has no exhaust to pay for. It is set here to show the distance.",
  },
  "ct-low-purge/steam": {
    rests: "ends",
    words:
      "As usual it lies inside on all fabrics. How much steam is vented is an estimate with wide ends, from 0.2 to nearly 3 kg/kg, since no figure for print steamers was found.",
  },
  "ct-ow-range/wash": {
    rests: "ends",
    words:
      "As usual it lies inside on all fabrics, near the upper end where reactive dye is washed off. The poorly run wash heats 110 L/kg; the well run one 10 L/kg with half of the heat of its drain.",
  },
  "ct-ow-range/prepare": {
    rests: "range",
    words:
      "Ours takes desizing, scouring, bleaching and the drying after them together; the range is of one stage on a range.",
  },
  "ct-print-rotary/calender": { rests: "range", words: SLOW_PRINTER },
  "ct-print-rotary/stenter": { rests: "range", words: SLOW_PRINTER },
  "ct-print-rotary/steam": {
    rests: "range",
    words: `${SLOW_PRINTER} Poorly run, the steamer adds nearly 3 kg/kg of vented steam.`,
  },
  "ct-thermosol/route": {
    rests: "range",
    words: `Continuous dyeing runs long lots without a printer and washes off no thickener. As usual heavy cloth lies inside, for polyester is washed with less water than cotton. ${SLOW_PRINTER}`,
  },
  "exhaust-balance/pad": {
    rests: "ends",
    words:
      "As usual it lies inside on all fabrics. Ours counts casing losses, waiting and the heat of the cloth, which the range does not, and these lift the poorly run hall above it on light cloth.",
  },
  "exhaust-balance/wash": {
    rests: "ends",
    words:
      "As usual it lies inside on all fabrics. Ours counts casing losses, waiting and the heat of the cloth, which the range does not, and these lift the poorly run hall above it on the lightest cloth.",
  },
  "dryer-usual/pad": {
    rests: "ends",
    words:
      "As usual it lies at the lower end of the range, heavy cloth just below. The well run hall gives half of the exhaust heat back; the figure quoted is for dryers that do not.",
  },
  "dryer-usual/wash": {
    rests: "ends",
    words:
      "As usual it lies at the lower end of the range, heavy cloth just below. The well run hall gives half of the exhaust heat back; the figure quoted is for dryers that do not.",
  },
  "cure-air/stenter": {
    rests: "ends",
    words:
      "The fan moves air by the hour whatever cloth runs. As usual, cloth of medium weight lies inside; light cloth gets more air and heavy cloth less.",
  },
  "cure-air/oven": {
    rests: "ends",
    words: `As usual, cloth of medium weight lies inside. ${BY_THE_HOUR}`,
  },
  "air-carbon/pigment": {
    rests: "ours",
    words:
      "Humectants of ink-jet ink are not washed out on this route; by our estimates of ink, laydown and the share that evaporates, several grams of carbon per kg of cloth leave with the air. The range is of finishing, and of gas that was cleaned where needed. Measure the exhaust, and read the recipe of the ink.",
  },
  "air-carbon/dye": {
    rests: "ours",
    words:
      "The same estimates of ink: most humectant is washed out here and only a small share evaporates. Heavy cloth lies inside.",
  },
};
