/**
 * Puts a route together for one kind of cloth: settings resolved, steps built one after the other, cloth
 * handed on, units checked.
 */

import type { FactorSet } from "../factors/factor.js";
import { constant, type Quantity } from "../numbers/quantity.js";
import { amountNamed } from "../steps/amounts.js";
import type { Cloth } from "../steps/cloth.js";
import { STEP_FLOWS, type Substance } from "../steps/flows.js";
import { STEP_KINDS } from "../steps/kinds.js";
import type { ClothKind, LoggedColumn, StepCheck, StepContext, StepKind } from "../steps/step.js";
import type { RecipeLine } from "../steps/substances.js";
import { flowName, type Term } from "../steps/term.js";
import { sameUnit, unitProduct } from "../units/dimension.js";
import { product } from "../steps/algebra.js";
import { bondOf } from "./bonds.js";
import type { Plant, PlantRoute, PlantStep } from "./plant.js";
import type { Asked, Lookup } from "./quantities.js";
import type { Site } from "./site.js";

/** A step of an arm with its terms. */
export interface ArmStep {
  /** Role in the route. */
  readonly role: string;
  /** Kind of step. */
  readonly kind: string;
  /** Machine it runs on; empty for none. */
  readonly machine: string;
  /** Terms. */
  readonly terms: readonly Term[];
  /** What its settings come to, to be held against what its machine can do. */
  readonly checks: readonly StepCheck[];
}

/** A route put together for one kind of cloth. */
export interface Arm {
  /** Route. */
  readonly route: PlantRoute;
  /** Steps in order. */
  readonly steps: readonly ArmStep[];
  /** Whether the route washes the print. */
  readonly washed: boolean;
}

/** What an arm is put together for. */
export interface ArmAsked {
  /** The route. */
  readonly route: PlantRoute;
  /** The route that the lots took, where it is another; a logged setting crosses to a step that both share. */
  readonly other: PlantRoute | undefined;
  /** Whether the lots really took this route. */
  readonly own: boolean;
  /** The cloth. */
  readonly kind: ClothKind;
}

/**
 * Puts an arm together.
 *
 * @param plant - the print house
 * @param site - the site
 * @param lookup - where factors are found
 * @param factors - all factors, for the lines of recipes
 * @param asked - route and cloth
 * @returns the arm
 * @throws Error when the units of a term do not agree: a fault of a step
 */
export function assembleArm(
  plant: Plant,
  site: Site,
  lookup: Lookup,
  factors: FactorSet,
  asked: ArmAsked,
): Arm {
  let cloth: Cloth = {
    water: [
      {
        amount: amountNamed("mass"),
        rate: product("regain-water", asked.kind.regain, asked.kind.dryShare),
      },
    ],
    temperature: site.hall.temperature,
    moisture: asked.kind.regain,
  };
  const taken = new Set<LoggedColumn>();
  const steps: ArmStep[] = [];
  for (const step of asked.route.steps) {
    const kind = STEP_KINDS[step.kind];
    if (kind === undefined) throw new Error(`No step is of kind ${step.kind}.`);
    const shared = asked.own || sharedWith(asked.other, step);
    const columns = shared ? kind.columns.filter((column) => !taken.has(column)) : [];
    kind.columns.forEach((column) => taken.add(column));
    const context = contextFor(plant, site, lookup, factors, asked, step, kind, columns);
    const result = kind.build(context, cloth);
    result.terms.forEach((term) => {
      holdUnits(step, term);
    });
    steps.push({
      role: step.role,
      kind: step.kind,
      machine: step.machine,
      terms: result.terms,
      checks: result.checks ?? [],
    });
    cloth = result.cloth;
  }
  return {
    route: asked.route,
    steps,
    washed: asked.route.steps.some((step) => step.kind === "wash-range"),
  };
}

function sharedWith(other: PlantRoute | undefined, step: PlantStep): boolean {
  return (
    other?.steps.some(
      (theirs) =>
        theirs.role === step.role && theirs.machine === step.machine && theirs.kind === step.kind,
    ) ?? false
  );
}

function contextFor(
  plant: Plant,
  site: Site,
  lookup: Lookup,
  factors: FactorSet,
  asked: ArmAsked,
  step: PlantStep,
  kind: StepKind,
  columns: readonly LoggedColumn[],
): StepContext {
  const machine = plant.sites[site.name]?.machines[step.machine];
  const ask = (name: string): Asked => {
    const spec = kind.settings[name];
    const id = `${kind.kind}.${name}`;
    const machineOwner = `machine ${site.name}/${step.machine}`;
    const owner = { site: site.name, machine: step.machine, role: step.role };
    const bond = bondOf(name, owner, (other) => other in kind.settings);
    const byRoute = step.settings[name];
    if (byRoute !== undefined) {
      return {
        id,
        owner: `route ${site.name}/${asked.route.name}/${step.role}`,
        given: byRoute,
        where: `routes.${asked.route.name}.settings.${step.role}.${name}`,
        bond,
      };
    }
    const byMachine = machine?.settings?.[name];
    if (byMachine !== undefined) {
      return {
        id,
        owner: machineOwner,
        given: byMachine,
        where: `sites.${site.name}.machines.${step.machine}.settings.${name}`,
        bond,
      };
    }
    const bySite = plant.sites[site.name]?.settings?.[id];
    return {
      id,
      bond,
      owner:
        spec?.owner === "role" ? `role ${site.name}/${step.machine}/${step.role}` : machineOwner,
      ...(bySite === undefined
        ? {}
        : { given: bySite, where: `sites.${site.name}.settings.${id}` }),
      ...(step.usual?.[name] === undefined ? {} : { usual: step.usual[name] }),
    };
  };
  return {
    role: step.role,
    set: (name) => lookup(ask(name)),
    choose: (name) => step.choices[name] ?? kind.choices[name]?.usual ?? "",
    takes: (column) => columns.includes(column),
    kind: asked.kind,
    hall: site.hall,
    supplyTemperature: site.supplyTemperature,
    steam: { enthalpy: site.steamEnthalpy },
    recipe: recipeOf(plant, site, lookup, factors, asked.route, step),
    inkWater:
      step.ink === undefined ? constant("no-ink", 0, "L/L") : site.at(`ink.${step.ink}.water`),
    own: asked.own,
    burnerVapour: site.burnerVapour,
    burnerEfficiency: site.burnerEfficiency,
  };
}

// Lines of a recipe: every factor `recipe.NAME.SUBSTANCE`, overruled by the site's setting of that id, and
// that by `role.SUBSTANCE` of the route.
function recipeOf(
  plant: Plant,
  site: Site,
  lookup: Lookup,
  factors: FactorSet,
  route: PlantRoute,
  step: PlantStep,
): readonly RecipeLine[] {
  if (step.recipe === undefined) return [];
  const prefix = `recipe.${step.recipe}.`;
  return [...factors.factors.keys()]
    .filter((id) => id.startsWith(prefix))
    .map((id) => {
      const substance = id.slice(prefix.length) as Substance;
      const byRoute = step.settings[substance];
      const bySite = plant.sites[site.name]?.settings?.[id];
      const content: Quantity = lookup({
        id,
        owner:
          byRoute === undefined
            ? `recipe ${site.name}/${step.recipe ?? ""}`
            : `route ${site.name}/${route.name}/${step.role}`,
        ...(byRoute !== undefined
          ? {
              given: byRoute,
              where: `routes.${route.name}.settings.${step.role}.${substance}`,
            }
          : bySite === undefined
            ? {}
            : { given: bySite, where: `sites.${site.name}.settings.${id}` }),
      });
      return { substance, content };
    });
}

function holdUnits(step: PlantStep, term: Term): void {
  const flow = typeof term.flow === "string" ? STEP_FLOWS[term.flow].unit : "g";
  const made = unitProduct(term.amount.unit, term.rate.unit);
  if (!sameUnit(made, flow)) {
    throw new Error(
      `Step ${step.role} (${step.kind}): ${term.amount.name} [${term.amount.unit}] × ${term.rate.id} [${term.rate.unit}] gives ${made}, not ${flow} of ${flowName(term.flow)}.`,
    );
  }
}
