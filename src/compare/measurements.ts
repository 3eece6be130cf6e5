/**
 * What a mill can measure, and which factors that makes known. Common practice in print houses, no source.
 */

/** A measurement a mill can make. */
export interface Measurement {
  /** Name. */
  readonly id: string;
  /** What to do, in plain words. */
  readonly words: string;
  /** Factors it makes known, by the start of their ids. */
  readonly shows: readonly string[];
}

/** Measurements; no factor is shown by two of them. */
export const MEASUREMENTS: readonly Measurement[] = [
  {
    id: "wash-water",
    words: "a water meter on the wash range",
    shows: [
      "wash-range.fresh-water",
      "wash-range.litres-per-bath",
      "wash-range.flow",
      "wash-range.fill",
      "wash-range.stops",
    ],
  },
  {
    id: "wash-heat",
    words: "a steam meter and thermometers on the wash range",
    shows: [
      "wash-range.warm",
      "wash-range.hot",
      "wash-range.recovery",
      "wash-range.surface",
      "wash-range.carry-over",
    ],
  },
  {
    id: "wash-electricity",
    words: "an electricity meter on the wash range",
    shows: ["wash-range.power", "wash-range.speed", "wash-range.setup"],
  },
  {
    id: "printer-water",
    words: "a water meter on the printer’s belt washer",
    shows: ["printer.belt-water", "printer.flush-water"],
  },
  {
    id: "printer-electricity",
    words: "an electricity meter on the printer and its dryer",
    shows: [
      "printer.power",
      "printer.dryer-power",
      "printer.standby",
      "printer.rate",
      "printer.setup",
    ],
  },
  {
    id: "ink",
    words: "the ink of each lot in the log",
    shows: ["printer.ink", "printer.coverage"],
  },
  {
    id: "purge",
    words: "the ink purged from the heads, weighed",
    shows: ["printer.purge"],
  },
  {
    id: "steamer",
    words: "a steam meter on the steamer",
    shows: [
      "steamer.flush",
      "steamer.idle",
      "steamer.temperature",
      "steamer.dwell",
      "steamer.contact",
      "steamer.setup",
      "steamer.batch-length",
      "steamer.cycle",
      "steamer.charge-steam",
    ],
  },
  {
    id: "drying-stenter",
    words: "meters of heat and electricity on the drying stenter",
    shows: ["stenter-dry."],
  },
  {
    id: "curing-stenter",
    words: "meters of heat and electricity on the curing stenter",
    shows: ["stenter-cure."],
  },
  {
    id: "hot-flue",
    words: "meters of heat and electricity on the hot flue",
    shows: ["hot-flue."],
  },
  { id: "oven", words: "meters of heat and electricity on the oven", shows: ["oven."] },
  { id: "calender", words: "a meter on the calender’s heating", shows: ["calender."] },
  { id: "tumbler", words: "a meter on the tumbler", shows: ["tumbler."] },
  {
    id: "pick-up",
    words: "cloth weighed before and after the pad",
    shows: ["pad.pickup"],
  },
  {
    id: "pad-bath",
    words: "the bath dumped from the pad, measured",
    shows: ["pad.dump", "pad.trough-wash", "pad.lots-per-change"],
  },
  {
    id: "squeeze",
    words: "cloth weighed after squeeze or slot",
    shows: ["squeeze.moisture-out", "vacuum-slot.moisture-out"],
  },
  { id: "boiler", words: "steam and gas meters at the boiler", shows: ["boiler."] },
  { id: "oil-heater", words: "gas and heat meters at the oil heater", shows: ["oil-heater."] },
  {
    id: "water-works",
    words: "water and electricity meters at the softener and pumps",
    shows: ["water-works."],
  },
  { id: "recipes", words: "recipes held against stock records", shows: ["recipe.", "ink."] },
  {
    id: "effluent",
    words: "composite samples and flow of the effluent",
    shows: ["substance."],
  },
  {
    id: "hall",
    words: "air of the hall and supply water, month by month",
    shows: ["hall.", "water.supply"],
  },
];

/** Factors that no meter of a mill shows, by the start of their ids: they rest on sources. */
export const OF_SOURCES: readonly string[] = [
  "fuel.",
  "gwp.",
  "grid.",
  "fibre.",
  "electricity.",
  "steam-intensity",
  "site.",
];

/**
 * Measurement that shows a factor.
 *
 * @param factor - id of the factor
 * @returns the measurement; undefined where none of the list does
 */
export function measurementOf(factor: string): Measurement | undefined {
  return MEASUREMENTS.find(({ shows }) => shows.some((start) => factor.startsWith(start)));
}
