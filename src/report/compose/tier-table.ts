/**
 * Each quantity by tier of evidence, T1 to T7, on both arms.
 */

import type { BrokenDown } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import { carrierOf } from "../../account/calibration.js";
import type { ProgramTerm } from "../../account/program.js";
import { keyOf } from "../../meters/corrected-states.js";
import { type TierId, TIERS } from "../../meters/precedence.js";
import { leavesOf } from "../../numbers/quantity.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import type { ReportInput } from "./input.js";

/** What tiers of a quantity rest on. */
type TierInput = Pick<ReportInput, "account" | "calibrated" | "factors">;

/** Quantities with their words. */
type Covered = readonly (readonly [BrokenDown, string])[];

/**
 * Share of a quantity in each tier.
 *
 * @param input - what the report is made of
 * @param id - the quantity
 * @param arm - the arm
 * @returns shares that add up to 1
 */
export function tierShares(
  input: TierInput,
  id: IndicatorId,
  arm: "pigment" | "dye",
): ReadonlyMap<TierId, number> {
  const { account, calibrated } = input;
  const states = new Map(
    (calibrated?.states ?? []).map((state) => [
      keyOf(state.site, state.machine, state.carrier),
      state,
    ]),
  );
  const sums = new Map<TierId, number>();
  let all = 0;
  const add = (tier: TierId, amount: number): void => {
    sums.set(tier, (sums.get(tier) ?? 0) + amount);
    all += amount;
  };
  for (const { term, mean } of account.parts.get(id) ?? []) {
    if (term.arm !== arm) continue;
    const size = Math.abs(mean);
    const key = account.program.classes[term.lotClass]?.key;
    const carrier = carrierOf(term.flow);
    const state =
      term.known === undefined || key === undefined || carrier === undefined
        ? undefined
        : states.get(keyOf(key.site, term.machine, carrier));
    if (term.known !== undefined) {
      const tier = state?.tier ?? (term.known === "measured" ? "T2" : "T4");
      // Only lots of this arm that were read have a reading; others are charged at the rate it gives the machine.
      const isOwn = tier === "T1" || tier === "T2";
      const read = isOwn && key?.own === arm ? (state?.read ?? 0) : 0;
      add("T1", size * read);
      add(tier === "T1" ? "T2" : tier, size * (1 - read));
      continue;
    }
    for (const [tier, share] of modelTiers(input, term)) add(tier, size * share);
  }
  return new Map(TIERS.map(({ id: tier }) => [tier, all > 0 ? (sums.get(tier) ?? 0) / all : 0]));
}

// Constants and facts of the world (fibres, fuels, steam) are no settings: they count for no tier.
function modelTiers(
  { account, factors }: TierInput,
  term: ProgramTerm,
): readonly (readonly [TierId, number])[] {
  const quantity = account.program.nodes.list[term.rate]?.quantity;
  const settings = (quantity === undefined ? [] : leavesOf(quantity)).filter(
    (leaf) =>
      leaf.provenance === "plant" || (leaf.provenance === "default" && leaf.id.includes(" @ ")),
  );
  if (settings.length === 0) return [["T5", 1]];
  return settings.map((leaf) => {
    const read = factors.sources.get(leaf.source)?.read;
    const isGuess = read === "own estimate" || read === "common practice";
    const tier = leaf.provenance === "plant" ? "T5" : isGuess ? "T7" : "T6";
    return [tier, 1 / settings.length] as const;
  });
}

/**
 * The table with its key.
 *
 * @param desk - the report
 * @param covered - quantities with their words
 * @returns a table behind the one on coverage, and what tiers are
 */
export function tierBlocks(desk: ReportDesk, covered: Covered): readonly Block[] {
  const rows = covered.flatMap(([id, words]): readonly (readonly Cell[])[] => {
    if (desk.compared(id) === undefined) return [];
    return (["pigment", "dye"] as const).map((arm) => {
      const shares = tierShares(desk.input, id, arm);
      return [
        textCell(words, true),
        textCell(arm),
        ...TIERS.map((tier) => numberCell(formatPercent(shares.get(tier.id) ?? 0))),
      ];
    });
  });
  const legend = TIERS.map(({ id, words }) => `${id} ${words}`).join("; ");
  return [
    {
      kind: "table",
      id: "meter-tiers",
      caption: "Coverage by tier of evidence, T1 to T7.",
      behind: true,
      head: [
        textCell("Quantity"),
        textCell("Arm"),
        ...TIERS.map(({ id }) => ({ ...textCell(id), align: "right" as const })),
      ],
      rows,
      widths: [2, 1, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8, 0.8],
    },
    {
      kind: "paragraph",
      tone: "small",
      runs: [
        {
          kind: "text",
          text: `Tiers of evidence: ${legend}. What a machine takes of a carrier has one tier, the highest that tells of it; none is a mean of several. Of a rate that no meter tells of, each setting counts alike.`,
        },
      ],
    },
  ];
}
