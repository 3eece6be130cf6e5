/**
 * Flags what options leave open about machines: whether one is bought or the one there is used, and what it takes.
 */

import type { Flag } from "./flags.js";
import type { InvestText } from "./schema.js";

/**
 * Flags options that buy machines.
 *
 * @param flag - where a flag is noted
 * @param text - the file
 */
export function flagMachines(flag: Flag, text: InvestText): void {
  const options = Object.entries(text.options);
  for (const [name, option] of options) {
    const { adds, to, capex } = option;
    const bought = capex.findIndex(({ kind, value }) => kind === "machine" && value > 0);
    if (to !== undefined && adds === undefined && bought >= 0)
      flag(
        ["options", name, "capex", bought],
        "adds-unsaid",
        capex[bought]?.what ?? "",
        "adds, which says beside which machine of the plant file it stands",
        "Add adds as { MACHINE: { hours, availability, standby } }, or adds: {} where the machines there do; until then its hours are not counted.",
      );
    for (const [machine, { standby }] of Object.entries(adds ?? {})) {
      if (standby === undefined)
        flag(
          ["options", name, "adds", machine],
          "standby-missing",
          machine,
          "standby as { kw, hours } for a machine that is bought",
          "Add what it takes while kept ready, from its data sheet; until then it takes nothing.",
        );
    }
    if (Object.keys(adds ?? {}).length === 0) continue;
    const alone = options.some(
      ([, other]) => other.to === to && Object.keys(other.adds ?? {}).length === 0,
    );
    if (!alone)
      flag(
        ["options", name, "adds"],
        "same-machine-missing",
        Object.keys(adds ?? {}).join(", "),
        "another option with the same route that buys no machine",
        "Add one with adds: {}, so that the purchase is set beside the machines that are there.",
      );
  }
}
