/**
 * Numbers that are drawn together, because halls run them together. Of two numbers a and b with correlation ρ
 * of their scores,
 *
 *     z_a = √|ρ| z + √(1 − |ρ|) z'_a        z_b = ± √|ρ| z + √(1 − |ρ|) z'_b        sign of ρ at b
 *
 * z is a stream of the pair, z' what each would have been without it. Spreads stay as they are. A number that
 * is fixed is not drawn, and its partner then has nothing to follow.
 *
 * The correlations are common practice, no source: nobody published how settings of print halls go together.
 * Where one default serves two machines, the half that is common to both is diluted by the bond of each: their
 * correlation is ¼ instead of ½. Two steps of one machine share its bond: theirs is ¾.
 */

import type { Bond } from "../numbers/quantity.js";

/** Whose number it is, for the name of the stream. */
export interface BondOwner {
  /** Site. */
  readonly site: string;
  /** Machine; none for numbers of the site. */
  readonly machine?: string;
  /** Role of the step; none for numbers of the site. */
  readonly role?: string;
}

interface Pair {
  /** What goes together, the head of the stream's name. */
  readonly name: string;
  /** The two settings. */
  readonly settings: readonly [string, string];
  /** Correlation of their scores. */
  readonly correlation: number;
  /** Whose bond it is: steps of a machine share that of the machine, a role has its own. */
  readonly owner: "site" | "machine" | "role";
}

const PAIRS: readonly Pair[] = [
  // The warmer the hall, the drier its air: the same vapour fills less of what warm air can hold.
  {
    name: "hall air",
    settings: ["hall.temperature", "hall.relative-humidity"],
    correlation: -0.5,
    owner: "site",
  },
  // Hotter is run shorter, for the print is fixed either way.
  {
    name: "dry fixation",
    settings: ["fix-temperature", "dwell"],
    correlation: -0.5,
    owner: "role",
  },
  { name: "steaming", settings: ["temperature", "dwell"], correlation: -0.5, owner: "role" },
  // A damper that is nearly shut makes the exhaust both hotter and damper.
  {
    name: "exhaust",
    settings: ["exhaust-temperature", "exhaust-humidity"],
    correlation: 0.5,
    owner: "machine",
  },
];

/**
 * Bond of a setting.
 *
 * @param setting - name of the setting; the id of the factor for numbers of the site
 * @param owner - whose number it is
 * @param beside - whether the step, or the site, has a setting
 * @returns stream and weight; undefined for what goes with nothing
 */
export function bondOf(
  setting: string,
  owner: BondOwner,
  beside: (setting: string) => boolean = () => true,
): Bond | undefined {
  for (const { name, settings, correlation, owner: whose } of PAIRS) {
    const [first, second] = settings;
    if (setting !== first && setting !== second) continue;
    if ((whose === "site") !== (owner.machine === undefined)) continue;
    if (!beside(first) || !beside(second)) continue;
    const weight = Math.sqrt(Math.abs(correlation));
    return {
      stream: `${name} @ ${whose} ${nameOf(owner, whose)} (drawn together)`,
      weight: setting === second ? Math.sign(correlation) * weight : weight,
    };
  }
  return undefined;
}

function nameOf({ site, machine, role }: BondOwner, whose: Pair["owner"]): string {
  const parts = whose === "role" ? [site, machine, role] : [site, machine];
  return parts.filter((part) => part !== undefined).join("/");
}
