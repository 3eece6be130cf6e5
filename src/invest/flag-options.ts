/**
 * Flags options that are not set beside each other on the same terms: repairs that one pays and another forgets,
 * exhaust treatment in one alone, dates after the money, leases that end early.
 */

import type { Flag } from "./flags.js";
import type { InvestText, OptionText } from "./schema.js";

type Named = readonly [string, OptionText];

/**
 * Flags what one option says and another one leaves out.
 *
 * @param flag - where a flag is noted
 * @param text - the file
 */
export function flagOptions(flag: Flag, text: InvestText): void {
  const options: readonly Named[] = Object.entries(text.options);
  const carrying = options.find(([, { kind }]) => kind === "carry-on");
  for (const one of options) {
    if (carrying !== undefined && one !== carrying) flagRepairs(flag, carrying, one);
    flagExhaust(flag, options, one);
    flagStock(flag, options, one);
    flagDue(flag, text.start, one);
    const [name, { lease, life }] = one;
    if (lease !== undefined && lease.end === undefined && lease.years < life)
      flag(
        ["options", name, "lease"],
        "lease-ends-early",
        `${lease.years} years`,
        `a payment at its end that buys the machine, or a lease of the ${life} years of its life`,
        "Add end to the lease; until then the machine is used for nothing after it.",
      );
  }
}

function flagRepairs(
  flag: Flag,
  [carryName, carryOn]: Named,
  [name, { life, capex, removes = [] }]: Named,
): void {
  for (const { kind, what, year, machine } of carryOn.capex) {
    if (kind !== "repair" || year > life) continue;
    const gone = removes.some((one) => one === machine || what.includes(one));
    const paid = capex.some(
      (line) =>
        line.kind === "repair" &&
        (line.what === what || (machine !== undefined && line.machine === machine)),
    );
    if (!gone && !paid)
      flag(
        ["options", name, "capex"],
        "repair-missing",
        what,
        `a line of kind repair for ${what}, which ${carryName} pays in year ${year}, as ${name} takes no machine out that it is for`,
        "Add the line with the year it falls due in then, or take the machine out under removes; until then the option is credited with sparing it.",
      );
  }
}

function flagExhaust(flag: Flag, options: readonly Named[], [name, option]: Named): void {
  const treats = ({ capex }: OptionText): boolean =>
    capex.some(({ kind, value }) => kind === "exhaust" && value > 0);
  if (!option.kind.startsWith("pigment-") || treats(option)) return;
  const other = options.find(
    ([also, one]) => also !== name && one.kind === option.kind && treats(one),
  );
  if (other === undefined) return;
  flag(
    ["options", name, "capex"],
    "exhaust-missing",
    name,
    `a line of kind exhaust as in ${other[0]}, which cures the same way`,
    "Add what treating its exhaust costs, or take the line out of both where none is needed.",
  );
}

/** Capital that comes with the lots that move, whatever fixes them. */
const WITH_LOTS = ["stock", "working-capital"] as const;

// What goes with lots that move, in one option alone; and money that is no payment.
function flagStock(flag: Flag, options: readonly Named[], [name, option]: Named): void {
  if (option.to === undefined) return;
  const pays = ({ capex }: OptionText, kind: string): boolean =>
    capex.some((line) => line.kind === kind && line.value !== 0);
  for (const kind of WITH_LOTS) {
    const other = options.find(
      ([also, one]) => also !== name && one.to !== undefined && pays(one, kind),
    );
    if (other === undefined || pays(option, kind)) continue;
    flag(
      ["options", name, "capex"],
      "one-off-missing",
      name,
      `a line of kind ${kind} as in ${other[0]}, which moves the same orders`,
      "Add it here, or take it out of both; until then one option looks better than the other for nothing.",
    );
  }
  option.capex.forEach(({ kind, what, value }, i) => {
    if (kind === "stock" && value > 0 && /writ(ten|e)[ -]?(off|down)/i.test(what))
      flag(
        ["options", name, "capex", i],
        "write-off-no-payment",
        what,
        "money that is paid: a write-off of stock was paid for when it was bought",
        "Put what clearing it away costs, less what is got for it, or 0.",
      );
  });
}

function flagDue(flag: Flag, start: string, [name, { capex }]: Named): void {
  capex.forEach(({ what, year, due }, i) => {
    const last = `${String(Number(start.slice(0, 4)) + year).padStart(4, "0")}${start.slice(4)}`;
    if (due !== undefined && due > last)
      flag(
        ["options", name, "capex", i, "due"],
        "due-after-money",
        due,
        year === 0
          ? `a day up to the start, ${start}, by which ${what} is paid`
          : `a day up to ${last}, the end of year ${year} in which ${what} is paid`,
        "Bring the day forward, put the money into a later year, or start later.",
      );
  });
}
