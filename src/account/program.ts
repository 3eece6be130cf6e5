/**
 * The whole report as one list of terms: flow at a machine = amount × rate, for both arms of every class
 * of lots, with the conversions of each flow to the fence and to the indicators.
 */

import type { FactorSet } from "../factors/factor.js";
import type { Group } from "../ledger/ledger.js";
import type { LedgerKey } from "../ledger/key.js";
import { type Arm, assembleArm } from "../plant/assemble.js";
import { blendOf, clothKind } from "../plant/cloth-kind.js";
import { plantUnder } from "../plant/dated.js";
import type { Plant } from "../plant/plant.js";
import { lookupIn } from "../plant/quantities.js";
import type { SiteText } from "../plant/schema.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { buildSite } from "../plant/site.js";
import { AMOUNTS } from "../steps/amounts.js";
import { flowName, type TermPart } from "../steps/term.js";
import { type Indicator, type IndicatorId, indicatorsOf } from "./indicators.js";
import type { Nodes } from "./nodes.js";
import type { Outlet } from "./outlet.js";
import { type OutletAtHand, type SiteAtHand, Workshop } from "./workshop.js";

/** Lots that share every rate. */
export interface LotClass {
  /** Site, settings in force, blend, both arms and own workflow; month and the rest of the key vary. */
  readonly key: LedgerKey;
  /** Sums over its groups. */
  readonly amounts: Float64Array;
  /** The arms. */
  readonly arms: Readonly<Record<Workflow, Arm>>;
  /** Utilities for each arm. */
  readonly outlets: Readonly<Record<Workflow, Outlet>>;
}

/** One term of one class and arm. */
export interface ProgramTerm {
  /** Class, as a place in the list. */
  readonly lotClass: number;
  /** Arm. */
  readonly arm: Workflow;
  /** Role of the step. */
  readonly role: string;
  /** Kind of step. */
  readonly kind: string;
  /** Machine; empty for none. */
  readonly machine: string;
  /** What meters know of it: measured, or allocated from a meter that others share; absent for a model. */
  readonly known?: "measured" | "allocated";
  /** Flow at the machine. */
  readonly flow: string;
  /** Place in the list of amounts. */
  readonly amount: number;
  /** Node of the rate. */
  readonly rate: number;
  /** Part of the step's time, where it is told from the rest. */
  readonly part?: TermPart;
}

/** The program. */
export interface Program {
  /** Quantities. */
  readonly nodes: Nodes;
  /** Classes of lots. */
  readonly classes: readonly LotClass[];
  /** Terms. */
  readonly terms: readonly ProgramTerm[];
  /** Class of a group, by its key; undefined for groups without counterpart. */
  readonly classOf: (key: LedgerKey) => number | undefined;
  /** Indicators with unit and words. */
  readonly indicators: ReadonlyMap<IndicatorId, Indicator>;
}

const PLACE_OF = new Map(AMOUNTS.map((amount, i) => [amount.name, i]));

/**
 * Writes the program.
 *
 * @param plant - the print house
 * @param factors - factors
 * @param groups - groups of the ledger
 * @param asOf - day of the report
 * @param workshop - what programs of other houses have put together, to share; its own when absent
 * @returns the program
 */
export function writeProgram(
  plant: Plant,
  factors: FactorSet,
  groups: readonly Group[],
  asOf: string,
  workshop = new Workshop(),
): Program {
  const desk = new Desk(plant, factors, asOf, workshop);
  const sums = new Map<string, { key: LedgerKey; amounts: Float64Array }>();
  for (const { key, amounts } of groups) {
    if (key.pigment === "") continue;
    const text = desk.classText(key);
    const sum = sums.get(text);
    if (sum === undefined) sums.set(text, { key, amounts: Float64Array.from(amounts) });
    else amounts.forEach((value, i) => (sum.amounts[i] = (sum.amounts[i] ?? 0) + value));
  }
  const classes = [...sums.values()].map(({ key, amounts }) => desk.lotClass(key, amounts));
  const place = new Map([...sums.keys()].map((text, i) => [text, i]));
  // Groups are asked for again and again, by month and by meter.
  const placeOfKey = new WeakMap<LedgerKey, number>();
  return {
    nodes: desk.nodes,
    classes,
    terms: classes.flatMap((lotClass, i) => desk.terms(lotClass, i)),
    classOf: (key) => {
      if (key.pigment === "") return undefined;
      const known = placeOfKey.get(key);
      if (known !== undefined) return known;
      const found = place.get(desk.classText(key));
      if (found !== undefined) placeOfKey.set(key, found);
      return found;
    },
    indicators: desk.indicators,
  };
}

class Desk {
  readonly nodes: Nodes;
  readonly indicators = new Map<IndicatorId, Indicator>();
  readonly #plant: Plant;
  readonly #factors: FactorSet;
  readonly #asOf: string;
  readonly #starts: readonly string[];
  readonly #sites = new Map<string, SiteAtHand>();
  readonly #outlets = new Map<string, Outlet>();
  readonly #arms = new Map<string, Arm>();
  readonly #workshop: Workshop;

  constructor(plant: Plant, factors: FactorSet, asOf: string, workshop: Workshop) {
    this.nodes = workshop.nodes;
    this.#workshop = workshop;
    this.#plant = plant;
    this.#factors = factors;
    this.#asOf = asOf;
    const several = [...factors.factors.values()].filter((factor) => factor.values.length > 1);
    this.#starts = [...new Set(several.flatMap((f) => f.values.map((v) => v.from)))].sort();
  }

  // Months between the same starts of vintages share every factor value.
  #vintage(month: string): number {
    return this.#starts.filter((from) => from <= `${month}-01`).length;
  }

  // What sets the numbers of a site apart: its name, vintages of factors, settings of the plant file.
  #placeText({ site, month, settings }: LedgerKey): string {
    return [site, this.#vintage(month), settings].join("|");
  }

  classText(key: LedgerKey): string {
    const { blend, pigment, dye, route } = key;
    return [this.#placeText(key), blend, pigment, dye, route].join("|");
  }

  lotClass(key: LedgerKey, amounts: Float64Array): LotClass {
    return {
      key,
      amounts,
      arms: { pigment: this.#arm(key, "pigment"), dye: this.#arm(key, "dye") },
      outlets: { pigment: this.#outlet(key, "pigment"), dye: this.#outlet(key, "dye") },
    };
  }

  terms(lotClass: LotClass, at: number): readonly ProgramTerm[] {
    return (["pigment", "dye"] as const).flatMap((arm) =>
      lotClass.arms[arm].steps.flatMap(({ role, kind, machine, terms }) =>
        terms.map((term) => ({
          lotClass: at,
          arm,
          role,
          kind,
          machine,
          flow: flowName(term.flow),
          amount: PLACE_OF.get(term.amount.name) ?? 0,
          rate: this.nodes.number(term.rate),
          ...(term.part === undefined ? {} : { part: term.part }),
        })),
      ),
    );
  }

  #site(key: LedgerKey): SiteAtHand {
    const text = this.#placeText(key);
    let found = this.#sites.get(text);
    if (found === undefined) {
      const written = this.#written(key);
      const content = [key.site, this.#vintage(key.month), this.#workshop.textOf(written)].join(
        "|",
      );
      found = this.#workshop.sites.once(content, () => {
        const lookup = lookupIn(this.#factors, key.month, this.#asOf);
        return { content, site: buildSite(key.site, written, lookup), lookup };
      });
      this.#sites.set(text, found);
    }
    return found;
  }

  #written(key: LedgerKey): SiteText {
    const written = plantUnder(this.#plant, key.settings).sites[key.site];
    if (written === undefined) throw new Error(`There is no site ${key.site}.`);
    return written;
  }

  #arm(key: LedgerKey, arm: Workflow): Arm {
    // All that an arm hangs on; so lots that took a route and lots that could have taken it share it.
    const text = [this.#placeText(key), key.blend, key[arm], key.route].join("|");
    let found = this.#arms.get(text);
    if (found === undefined) {
      const { site, lookup, content } = this.#site(key);
      const plant = plantUnder(this.#plant, key.settings);
      const route = plant.routes[key[arm]];
      if (route === undefined) throw new Error(`There is no route ${key[arm]}.`);
      // The route that lots took: the other arm's, unless a scenario puts another in its place.
      const other = plant.routes[key.route];
      const own = key.route === route.name;
      const written = [content, this.#workshop.textOf(route), this.#workshop.textOf(other)];
      found = this.#workshop.arms.once([...written, own, key.blend].join("|"), () =>
        assembleArm(plant, site, lookup, this.#factors, {
          route,
          other,
          own,
          kind: clothKind(blendOf(key.blend), ({ id }) => site.at(id)),
        }),
      );
      this.#arms.set(text, found);
    }
    return found;
  }

  #outlet(key: LedgerKey, arm: Workflow): Outlet {
    const { washed, route } = this.#arm(key, arm);
    const ink = route.steps.find((step) => step.ink !== undefined)?.ink;
    const text = `${this.#placeText(key)}|${String(washed)}|${ink ?? ""}`;
    let found = this.#outlets.get(text);
    if (found === undefined) {
      const content = [this.#site(key).content, this.#plant.gwp, washed, ink ?? ""].join("|");
      const { outlet, indicators } = this.#workshop.outlets.once(content, () =>
        this.#makeOutlet(key, washed, ink),
      );
      for (const [id, indicator] of indicators) {
        if (!this.indicators.has(id)) this.indicators.set(id, indicator);
      }
      this.#outlets.set(text, (found = outlet));
    }
    return found;
  }

  #makeOutlet(key: LedgerKey, washed: boolean, ink: string | undefined): OutletAtHand {
    const { site } = this.#site(key);
    const indicators = indicatorsOf(site, this.#written(key), this.#plant.gwp, ink);
    const fence = new Map<string, readonly { to: string; node: number }[]>();
    for (const [flow, list] of site.conversions(washed)) {
      fence.set(
        flow,
        list.map(({ to, rate }) => ({ to, node: this.nodes.number(rate) })),
      );
    }
    const outlet = {
      fence,
      coilSteam: this.nodes.number(site.coilSteam),
      raisedSteam: this.nodes.number(site.raisedSteam),
      indicators: new Map(
        [...indicators].map(([id, { intensities }]) => [
          id,
          new Map([...intensities].map(([flow, quantity]) => [flow, this.nodes.number(quantity)])),
        ]),
      ),
    };
    return { outlet, indicators };
  }
}
