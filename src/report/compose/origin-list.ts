/**
 * Origins by place of the report.
 */

/** Where the numbers of a place come from. */
export interface Origin {
  /** Ids of headings or tables. */
  readonly at: RegExp;
  /** Where they come from, in words. */
  readonly from: string;
  /** Words after `millrace` that show more, capitals to be filled in; absent where the place itself is all there is. */
  readonly ask?: string;
}

/** Origins; the first that fits a place holds. */
export const ORIGINS: readonly Origin[] = [
  {
    at: /^answer$|^top$/,
    from: "Draws of both arms; intervals are those of the figures beside them. Counts are of the log, shares measured and estimated are of the terms.",
    ask: "explain INDICATOR",
  },
  {
    at: /^indicators$/,
    from: "Draws of both arms: medians, the difference draw by draw, the share of draws in which pigment takes less. Mill’s own: shares of terms whose settings are the mill’s.",
    ask: "explain INDICATOR",
  },
  {
    at: /^boundary$|^pigment-routes$|^without-blends$/,
    from: "Terms of the same lots, added by the pigment route beside them, and without lots of blends; area and lots are counted from the log.",
    ask: "explain INDICATOR --terms 100",
  },
  {
    at: /^(?:water|load|energy|emissions|air|cost)$/,
    from: "Means of the terms by step over the total of the arm; intervals are those of the figures beside them.",
    ask: "explain INDICATOR --terms 100",
  },
  {
    at: /-steps$|^energy-carriers$|^co2-scopes$/,
    from: "Means of draws of the terms (amount × rate), added by step, carrier or scope.",
    ask: "explain INDICATOR --terms 100",
  },
  {
    at: /-inventory$|^elsewhere$/,
    from: "2.5th and 97.5th of a hundred of the draws of the figure beside them.",
    ask: "explain INDICATOR",
  },
  {
    at: /^concentrations$/,
    from: "Load over discharge of each route, draw by draw.",
    ask: "explain INDICATOR",
  },
  {
    at: /^substances$/,
    from: "Recipes and laydown of the plant file or the factors, times the shares of each substance that are fixed, evaporate, drain or are dumped.",
    ask: "factors substance",
  },
  {
    at: /^cost-split$/,
    from: "Mean amounts at the fence, times the tariffs of the plant file.",
    ask: "explain cost --terms 100",
  },
  {
    at: /^lots$|-lot-table$/,
    from: "Mean of draws of each lot shown; quartiles over lots, not over draws.",
    ask: "explain INDICATOR --rows 100",
  },
  {
    at: /^months$|-month-table$/,
    from: "Means of draws of the terms of a month’s lots on the route they took.",
    ask: "report --from DAY --to DAY",
  },
  {
    at: /^groups$|^by-(?:fabric|client)$/,
    from: "Means of draws of the terms of the lots of a fabric or client, over their accepted area.",
    ask: "explain INDICATOR --client NAME",
  },
  {
    at: /^as-printed$|^actual$/,
    from: "Means of draws of all lots on the route they took, and on either.",
    ask: "explain INDICATOR",
  },
  {
    at: /^doubt$|^distribution-table$|^medians-means$/,
    from: "Quantiles and means of the draws of the share saved and of both arms.",
    ask: "explain INDICATOR",
  },
  {
    at: /^comparison-methods$/,
    from: "Draws of the difference, by the three methods named in the caption with their papers.",
  },
  {
    at: /^overturn$|^break-even/,
    from: "One setting held at a value in every draw, all else as drawn; the value is sought at which the median share saved is nothing. The scatter is counted from the log.",
    ask: "explain INDICATOR --break-evens",
  },
  {
    at: /^map-/,
    from: "Two settings turned over their plausible range, all else at its median.",
    ask: "report --set KEY=VALUE",
  },
  {
    at: /-swing-table$|^swings$/,
    from: "One factor at the ends of its 95 % interval, all others at their medians.",
    ask: "explain INDICATOR --doubt 12",
  },
  {
    at: /^worth|^wide-defaults$/,
    from: "Regression of the saving on the draws of what a measurement would show; scores, medians and intervals are those of the factors.",
    ask: "factors --dossier",
  },
  {
    at: /^what-if$|^scenario-/,
    from: "The plant file with the changes named, on the same lots and draws.",
    ask: "explain INDICATOR",
  },
  {
    at: /^function$|^equivalence$/,
    from: "Grades, rejects and reprints as the log has them.",
    ask: "check",
  },
  {
    at: /^claim/,
    from: "The report’s own figures, held against the thresholds of the claim policy.",
    ask: "report --formats json",
  },
  {
    at: /^meter/,
    from: "Readings of meters.csv, and means of draws of the lots as printed.",
    ask: "explain INDICATOR",
  },
  {
    at: /^import-/,
    from: "Counts of rows of the log, by reason; digests are of the files read.",
    ask: "check",
  },
  {
    at: /^factor|^method$/,
    from: "Plant file and factors in force on the report’s date; ends of bare numbers by the rule said there.",
    ask: "factors",
  },
  {
    at: /^machine-checks$/,
    from: "Settings at their medians, put through the equations of the step.",
    ask: "factors stenter",
  },
  { at: /^sources$|^cautions$|^glossary$/, from: "The publications named in the same line." },
];
