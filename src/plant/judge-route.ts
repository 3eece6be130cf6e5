/**
 * Judges a route of the plant file and ties its steps to machines.
 */

import type { FactorSet } from "../factors/factor.js";
import type { KeyPath } from "../factors/yaml-text.js";
import { STEP_KINDS } from "../steps/kinds.js";
import type { StepKind } from "../steps/step.js";
import type { Complaints } from "./complaints.js";
import { served, WITHOUT_MACHINE } from "./machine-kinds.js";
import type { PlantRoute, PlantStep } from "./plant.js";
import type { PlantText, RouteText } from "./schema.js";
import { FINISH, type RoutePlan, type RouteStep, SHIPPED_ROUTES } from "./shipped-routes.js";

/** What a route is judged by. */
export interface RouteDesk {
  /** Where faults are noted. */
  readonly complaints: Complaints;
  /** Factors in force. */
  readonly factors: FactorSet;
  /** The whole plant file. */
  readonly text: PlantText;
}

/**
 * Judges a route.
 *
 * @param desk - what it is judged by
 * @param name - its name
 * @param route - the route as written
 * @returns the route; to be used only when no fault was noted
 */
export function judgeRoute(desk: RouteDesk, name: string, route: RouteText): PlantRoute {
  const at: KeyPath = ["routes", name];
  const plan = planOf(desk, at, route);
  const workflow = route.workflow ?? plan?.workflow;
  // A key that was refused right here may have been meant for one of the two.
  const unclear = route.like === undefined && (workflow === undefined || route.steps === undefined);
  if (unclear && !desk.complaints.refusedUnder(at).some((key) => key !== "machines")) {
    desk.complaints.say(
      at,
      "route-unclear",
      name,
      "`like` with a shipped route, or `workflow` and `steps`",
      "Add one of the two.",
    );
  }
  const own = (route.steps ?? plan?.steps ?? []).map(plainStep);
  const steps = route.finish === "soft" ? [...own, ...FINISH] : own;
  // Where steps are missing or at fault every role may look like a stranger, which says nothing new.
  const whole = !["steps", "finish"].some((key) => desk.complaints.refusedWithin([...at, key]));
  if (own.length > 0 && whole) strangers(desk, at, route, steps);
  return {
    name,
    workflow: workflow ?? "pigment",
    dye: route.dye ?? plan?.dye,
    words: route.words ?? plan?.words ?? name,
    steps: steps.map((step, i) =>
      judgeStep({ desk, at, route, stepAt: [...at, "steps", i] }, step),
    ),
    printWidth: route.print_width,
  };
}

function planOf(desk: RouteDesk, at: KeyPath, route: RouteText): RoutePlan | undefined {
  if (route.like === undefined) return undefined;
  if (Object.hasOwn(SHIPPED_ROUTES, route.like)) return SHIPPED_ROUTES[route.like];
  desk.complaints.unknown(
    [...at, "like"],
    route.like,
    "a shipped route",
    Object.keys(SHIPPED_ROUTES),
  );
  return undefined;
}

function plainStep(step: NonNullable<RouteText["steps"]>[number] | RouteStep): RouteStep {
  return {
    role: step.role,
    kind: step.kind,
    ...(step.recipe === undefined ? {} : { recipe: step.recipe }),
    ...(step.ink === undefined ? {} : { ink: step.ink }),
    ...("usual" in step ? { usual: step.usual } : {}),
  };
}

/** The route a step belongs to. */
interface Place {
  readonly desk: RouteDesk;
  /** Path of the route. */
  readonly at: KeyPath;
  readonly route: RouteText;
  /** Path of the step, where the route writes its steps out. */
  readonly stepAt: KeyPath;
}

function judgeStep(place: Place, step: RouteStep): PlantStep {
  const { desk, at, route, stepAt } = place;
  const machine = route.machines[step.role] ?? "";
  const ofRole = <T>(all: Readonly<Record<string, T>> | undefined): Record<string, T> =>
    Object.fromEntries(
      Object.entries(all ?? {})
        .filter(([key]) => key.startsWith(`${step.role}.`))
        .map(([key, value]) => [key.slice(step.role.length + 1), value]),
    );
  const settings = ofRole(route.settings);
  const choices = ofRole(route.choices);
  const bare = { ...step, machine, settings, choices };
  const kind = STEP_KINDS[step.kind];
  if (kind === undefined) {
    desk.complaints.unknown(
      [...stepAt, "kind"],
      step.kind,
      "a kind of step",
      Object.keys(STEP_KINDS),
    );
    return bare;
  }
  const withRecipe = judgeRecipe(desk, stepAt, step);
  if (desk.complaints.refused([...stepAt, "role"])) return bare;
  judgeSettings(place, step, kind, settings, withRecipe);
  judgeChoices(desk, at, step, kind, choices);
  const byMachine = judgeMachine(desk, at, step, machine);
  return { ...bare, choices: { ...byMachine, ...choices } };
}

// The choices of the machine, when it is one of every site and fits the step.
function judgeMachine(
  desk: RouteDesk,
  at: KeyPath,
  step: RouteStep,
  machine: string,
): Readonly<Record<string, string>> {
  const path = [...at, "machines", step.role];
  if (machine === "") {
    if (!WITHOUT_MACHINE.has(step.kind)) {
      desk.complaints.say(
        path,
        "route-misses-step",
        step.role,
        `a machine for step ${step.role} (${step.kind})`,
        `Add \`${step.role}: NAME\` with a machine of the site.`,
      );
    }
    return {};
  }
  const choices: Record<string, string> = {};
  for (const [name, site] of Object.entries(desk.text.sites)) {
    // What is wrong with the machine itself is said where it stands.
    if (desk.complaints.refused(["sites", name, "machines", machine, "kind"])) continue;
    const found = Object.hasOwn(site.machines, machine) ? site.machines[machine] : undefined;
    if (found === undefined) {
      const known = Object.keys(site.machines);
      desk.complaints.unknown(path, machine, `a machine of site ${name}`, known);
      continue;
    }
    const serves = served(found.kind);
    if (serves.length > 0 && !serves.includes(step.kind)) {
      desk.complaints.say(
        path,
        "machine-of-other-kind",
        machine,
        `a machine that serves step kind ${step.kind}, not ${found.kind}`,
        "Name another machine or correct its kind.",
      );
    }
    Object.assign(choices, found.choices);
  }
  return choices;
}

// Whether the lines of the recipe are known.
function judgeRecipe(desk: RouteDesk, stepAt: KeyPath, step: RouteStep): boolean {
  const family = (pattern: RegExp): readonly string[] => [
    ...new Set([...desk.factors.factors.keys()].flatMap((id) => pattern.exec(id)?.[1] ?? [])),
  ];
  const inks = family(/^ink\.(.+)\.water$/);
  if (step.ink !== undefined && !inks.includes(step.ink)) {
    desk.complaints.unknown([...stepAt, "ink"], step.ink, "an ink", inks);
  }
  const recipes = family(/^recipe\.(.+)\.[^.]+$/);
  if (step.recipe !== undefined && !recipes.includes(step.recipe)) {
    desk.complaints.unknown([...stepAt, "recipe"], step.recipe, "a recipe", recipes);
    return false;
  }
  return !desk.complaints.refused([...stepAt, "recipe"]);
}

function judgeSettings(
  { desk, at }: Place,
  step: RouteStep,
  kind: StepKind,
  settings: Readonly<Record<string, PlantStep["settings"][string]>>,
  withRecipe: boolean,
): void {
  const prefix = `recipe.${step.recipe ?? ""}.`;
  for (const [key, value] of Object.entries(settings)) {
    const path = [...at, "settings", `${step.role}.${key}`];
    const spec = kind.settings[key];
    const line = desk.factors.factors.get(prefix + key);
    if (spec !== undefined) {
      desk.complaints.number(path, value, spec.limits, spec.unit);
    } else if (line !== undefined) {
      desk.complaints.number(path, value, line.plausible, line.unit);
    } else if (withRecipe) {
      const lines = [...desk.factors.factors.keys()].filter((id) => id.startsWith(prefix));
      desk.complaints.unknown(path, key, `a setting of ${step.kind}`, [
        ...Object.keys(kind.settings),
        ...lines.map((id) => id.slice(prefix.length)),
      ]);
    }
  }
}

function judgeChoices(
  desk: RouteDesk,
  at: KeyPath,
  step: RouteStep,
  kind: StepKind,
  choices: Readonly<Record<string, string>>,
): void {
  for (const [key, word] of Object.entries(choices)) {
    const path = [...at, "choices", `${step.role}.${key}`];
    const spec = kind.choices[key];
    if (spec === undefined) {
      desk.complaints.unknown(path, key, `a choice of ${step.kind}`, Object.keys(kind.choices));
    } else if (!spec.options.includes(word)) {
      desk.complaints.unknown(path, word, `a choice for ${key}`, spec.options);
    }
  }
}

// Roles in machines, settings and choices that no step of the route has.
function strangers(
  desk: RouteDesk,
  at: KeyPath,
  route: RouteText,
  steps: readonly RouteStep[],
): void {
  const roles = steps.map(({ role }) => role);
  for (const role of Object.keys(route.machines)) {
    if (roles.includes(role)) continue;
    desk.complaints.unknown([...at, "machines", role], role, "a step of the route", roles);
  }
  for (const where of ["settings", "choices"] as const) {
    for (const key of Object.keys(route[where] ?? {})) {
      if (roles.some((role) => key.startsWith(`${role}.`))) continue;
      desk.complaints.unknown([...at, where, key], key, "role.name of a step of the route", roles);
    }
  }
}
