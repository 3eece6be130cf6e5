/**
 * Reads a plant file and ties its routes to its machines; names every fault in one run.
 */

import type { FactorSet } from "../factors/factor.js";
import { nearest } from "../factors/nearest.js";
import { judgeBy } from "../factors/schema-problems.js";
import {
  type KeyPath,
  problemAt,
  readYaml,
  type TextFile,
  type YamlText,
} from "../factors/yaml-text.js";
import type { Judged, Problem } from "../problems/problem.js";
import { STEP_KINDS } from "../steps/kinds.js";
import { givenFault } from "./given.js";
import type { Plant, PlantRoute, PlantStep } from "./plant.js";
import { PlantFile, type PlantText, type RouteText } from "./schema.js";
import { FINISH, type RouteStep, SHIPPED_ROUTES } from "./shipped-routes.js";

/** Kinds of machine that serve more than the step of their own name. */
const SERVES: Readonly<Record<string, readonly string[]>> = {
  stenter: ["stenter-dry", "stenter-cure"],
};

/** Steps that need no machine. */
const WITHOUT_MACHINE = new Set(["stored"]);

/**
 * Reads the plant file.
 *
 * @param file - the file
 * @param factors - factors in force, for limits and known names
 * @returns the plant, or every fault with its line
 */
export function readPlant(file: TextFile, factors: FactorSet): Judged<Plant> {
  const yaml = readYaml(file);
  if (yaml.value === undefined) return { problems: yaml.problems };
  const text = judgeBy(PlantFile, yaml.value);
  if (text.value === undefined) return { problems: text.problems };
  const desk = new Desk(yaml.value, text.value, factors);
  const routes = Object.fromEntries(
    Object.entries(text.value.routes).map(([name, route]) => [name, desk.route(name, route)]),
  );
  desk.sites();
  desk.counterparts();
  if (desk.problems.length > 0) return { problems: desk.problems };
  return {
    value: {
      house: text.value.house,
      gwp: text.value.gwp ?? "AR6",
      sites: text.value.sites,
      routes,
      counterparts: text.value.counterparts ?? {},
      text: text.value,
    },
    problems: [],
  };
}

// Judges one file and gathers what is wrong with it.
class Desk {
  readonly problems: Problem[] = [];
  readonly #yaml: YamlText;
  readonly #text: PlantText;
  readonly #factors: FactorSet;

  constructor(yaml: YamlText, text: PlantText, factors: FactorSet) {
    this.#yaml = yaml;
    this.#text = text;
    this.#factors = factors;
  }

  route(name: string, route: RouteText): PlantRoute {
    const at: KeyPath = ["routes", name];
    const plan = route.like === undefined ? undefined : SHIPPED_ROUTES[route.like];
    if (route.like !== undefined && plan === undefined) {
      this.#unknown([...at, "like"], route.like, "a shipped route", Object.keys(SHIPPED_ROUTES));
    }
    const workflow = route.workflow ?? plan?.workflow;
    if (workflow === undefined || (plan === undefined && route.steps === undefined)) {
      this.#say(
        at,
        "route-unclear",
        name,
        "`like` with a shipped route, or `workflow` and `steps`",
        "Add one of the two.",
      );
    }
    const own: readonly RouteStep[] = (route.steps ?? plan?.steps ?? []).map((step) => ({
      role: step.role,
      kind: step.kind,
      ...(step.recipe === undefined ? {} : { recipe: step.recipe }),
      ...(step.ink === undefined ? {} : { ink: step.ink }),
      ...("usual" in step ? { usual: step.usual } : {}),
    }));
    const steps = route.finish === "soft" ? [...own, ...FINISH] : own;
    this.#strangers(at, route, steps);
    return {
      name,
      workflow: workflow ?? "pigment",
      dye: route.dye ?? plan?.dye,
      words: route.words ?? plan?.words ?? name,
      steps: steps.map((step) => this.#step(at, route, step)),
      printWidth: route.print_width,
    };
  }

  #step(at: KeyPath, route: RouteText, step: RouteStep): PlantStep {
    const kind = STEP_KINDS[step.kind];
    if (kind === undefined) {
      this.#unknown([...at, "steps"], step.kind, "a kind of step", Object.keys(STEP_KINDS));
    }
    const machine = route.machines[step.role] ?? "";
    if (machine === "" && !WITHOUT_MACHINE.has(step.kind)) {
      this.#say(
        [...at, "machines"],
        "route-misses-step",
        step.role,
        `a machine for step ${step.role} (${step.kind})`,
        `Add \`${step.role}: NAME\` with a machine of the site.`,
      );
    }
    const choices: Record<string, string> = {};
    for (const [siteName, site] of Object.entries(this.#text.sites)) {
      const found = site.machines[machine];
      if (machine === "") continue;
      if (found === undefined) {
        this.#unknown(
          [...at, "machines", step.role],
          machine,
          `a machine of site ${siteName}`,
          Object.keys(site.machines),
        );
        continue;
      }
      if (found.kind !== step.kind && !(SERVES[found.kind] ?? []).includes(step.kind)) {
        this.#say(
          [...at, "machines", step.role],
          "machine-of-other-kind",
          machine,
          `a machine that serves step kind ${step.kind}, not ${found.kind}`,
          "Name another machine or correct its kind.",
        );
      }
      Object.assign(choices, found.choices);
    }
    const prefix = `${step.role}.`;
    const settings = Object.fromEntries(
      Object.entries(route.settings ?? {})
        .filter(([key]) => key.startsWith(prefix))
        .map(([key, value]) => [key.slice(prefix.length), value]),
    );
    for (const [key, word] of Object.entries(route.choices ?? {})) {
      if (key.startsWith(prefix)) choices[key.slice(prefix.length)] = word;
    }
    for (const [key, value] of Object.entries(settings)) {
      const spec = kind?.settings[key];
      if (kind !== undefined && spec === undefined) {
        if (
          this.#factors.factors.has(`recipe.${step.recipe ?? ""}.${key.replace(/^recipe\./, "")}`)
        )
          continue;
        this.#unknown(
          [...at, "settings", prefix + key],
          key,
          `a setting of ${step.kind}`,
          Object.keys(kind.settings),
        );
      } else if (spec !== undefined) {
        const fault = givenFault(value, spec.limits);
        if (fault !== undefined) {
          this.#say(
            [...at, "settings", prefix + key],
            "setting-out-of-range",
            String(typeof value === "number" ? value : value.value),
            `${fault} ${spec.unit}`,
            "Correct the value or its unit.",
          );
        }
      }
    }
    for (const [name, word] of Object.entries(choices)) {
      const spec = kind?.choices[name];
      if (spec !== undefined && !spec.options.includes(word)) {
        this.#unknown([...at, "choices"], word, `a choice for ${name}`, spec.options);
      }
    }
    return { ...step, machine, settings, choices };
  }

  // Roles in machines, settings and choices that no step of the route has.
  #strangers(at: KeyPath, route: RouteText, steps: readonly RouteStep[]): void {
    const roles = steps.map((step) => step.role);
    for (const role of Object.keys(route.machines)) {
      if (!roles.includes(role))
        this.#unknown([...at, "machines", role], role, "a step of the route", roles);
    }
    for (const where of ["settings", "choices"] as const) {
      for (const key of Object.keys(route[where] ?? {})) {
        const role = key.split(".")[0] ?? "";
        if (!roles.includes(role))
          this.#unknown([...at, where, key], key, "role.name of a step of the route", roles);
      }
    }
  }

  sites(): void {
    for (const [name, site] of Object.entries(this.#text.sites)) {
      for (const [id, value] of Object.entries(site.settings ?? {})) {
        const at: KeyPath = ["sites", name, "settings", id];
        const factor = this.#factors.factors.get(id);
        if (factor === undefined) {
          this.#unknown(at, id, "the id of a factor", [...this.#factors.factors.keys()]);
          continue;
        }
        const fault = givenFault(value, factor.plausible);
        if (fault !== undefined)
          this.#say(
            at,
            "setting-out-of-range",
            String(typeof value === "number" ? value : value.value),
            `${fault} ${factor.unit}`,
            "Correct the value or its unit.",
          );
      }
      for (const [machineName, machine] of Object.entries(site.machines)) {
        const at: KeyPath = ["sites", name, "machines", machineName];
        const kinds = SERVES[machine.kind] ?? [machine.kind];
        const known = kinds.flatMap((kind) =>
          STEP_KINDS[kind] === undefined ? [] : [STEP_KINDS[kind]],
        );
        if (known.length === 0) {
          this.#unknown([...at, "kind"], machine.kind, "a kind of machine", [
            ...Object.keys(STEP_KINDS),
            ...Object.keys(SERVES),
          ]);
          continue;
        }
        for (const [key, value] of Object.entries(machine.settings ?? {})) {
          const spec = known.map((kind) => kind.settings[key]).find((found) => found !== undefined);
          if (spec === undefined) {
            this.#unknown(
              [...at, "settings", key],
              key,
              `a setting of ${machine.kind}`,
              known.flatMap((kind) => Object.keys(kind.settings)),
            );
            continue;
          }
          const fault = givenFault(value, spec.limits);
          if (fault !== undefined)
            this.#say(
              [...at, "settings", key],
              "setting-out-of-range",
              String(typeof value === "number" ? value : value.value),
              `${fault} ${spec.unit}`,
              "Correct the value or its unit.",
            );
        }
      }
      if (
        !this.#factors.factors.has(`grid.${site.place}.intensity`) &&
        site.electricity?.intensity === undefined
      ) {
        this.#say(
          ["sites", name, "place"],
          "place-not-listed",
          site.place,
          "a place whose grid intensity is shipped, or your own figure",
          "Add `electricity: { intensity: …, }` in kg CO2e per kWh; the national energy agency or the supplier's disclosure states it.",
        );
      }
      for (const [key, fuel] of [
        ["burner", site.burner?.fuel],
        ["oil_heater", site.oil_heater?.fuel],
        ["boiler", site.boiler?.fuel],
      ] as const) {
        if (fuel === undefined || fuel === "bought") continue;
        if (!this.#factors.factors.has(`fuel.${fuel}.co2`)) {
          const fuels = [...this.#factors.factors.keys()].flatMap(
            (id) => /^fuel\.(.+)\.co2$/.exec(id)?.[1] ?? [],
          );
          this.#unknown(["sites", name, key, "fuel"], fuel, "a fuel", fuels);
        }
      }
    }
  }

  counterparts(): void {
    const names = Object.keys(this.#text.routes);
    for (const [from, to] of Object.entries(this.#text.counterparts ?? {})) {
      for (const route of [from, to]) {
        if (!names.includes(route))
          this.#unknown(["counterparts", from], route, "a route of this file", names);
      }
    }
  }

  #unknown(path: KeyPath, value: string, what: string, known: readonly string[]): void {
    const near = nearest(value, known);
    const list = known.length <= 24 ? `: ${known.join(", ")}` : "";
    this.#say(
      path,
      "unknown-name",
      value,
      what + list,
      near === undefined ? "Correct the name." : `Did you mean ${near}?`,
    );
  }

  #say(path: KeyPath, code: string, value: string, expected: string, remedy: string): void {
    this.problems.push(problemAt(this.#yaml, path, { code, value, expected, remedy }));
  }
}
