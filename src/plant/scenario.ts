/**
 * A what-if of the plant file: the print house as it is not, judged like the house itself on every day.
 */

import type { FactorSet } from "../factors/factor.js";
import type { Complaints } from "./complaints.js";
import { houseOf, type JudgedVersion } from "./dated.js";
import { judgeChange } from "./judge-change.js";
import { judgeHouse } from "./judge-house.js";
import { mergeChange } from "./merge-change.js";
import type { Plant, Scenario } from "./plant.js";
import { differsFrom } from "./scenario-words.js";
import {
  type LaidOver,
  type PlantText,
  type RouteText,
  type ScenarioText,
  type SiteText,
} from "./schema.js";
import { SHIPPED_ROUTES, type Workflow } from "./shipped-routes.js";

/** A scenario with the house under it on every day. */
export interface JudgedScenario {
  /** The scenario; to be used only when no fault was noted. */
  readonly scenario: Scenario;
  /** The house under it, oldest first. */
  readonly versions: readonly JudgedVersion[];
}

/** A share of first quality as the file gives it. */
type Share = NonNullable<NonNullable<SiteText["yield"]>[Workflow]>;

/**
 * Judges a scenario. It is laid over the file as of each of its changes, and so holds on every day; a thing
 * that only a later change brings is left out before it.
 *
 * @param title - its name, and whether it was asked for on the command line
 * @param title.name - its name
 * @param title.asked - whether it was asked for on the command line
 * @param says - what it says
 * @param versions - the house by date, oldest first; at least one
 * @param factors - factors in force
 * @returns the scenario and the house under it
 */
export function judgeScenario(
  title: { readonly name: string; readonly asked: boolean },
  says: ScenarioText,
  versions: readonly JudgedVersion[],
  factors: FactorSet,
): JudgedScenario {
  const newest = versions[versions.length - 1]!;
  const place = ["scenarios", title.name] as const;
  const complaints = newest.complaints.under(place);
  const whole = judgeChange(complaints, newest.text, says);
  const rejects = rejectsOf(says);
  const under = versions.map((version): JudgedVersion => {
    const last = version === newest;
    const at = last ? complaints : version.complaints.under(place);
    const laid = mergeChange(
      version.text,
      last ? whole : knownThen(version.text, whole),
      (where) => `plant.yaml, scenario ${title.name}, ${where}`,
    );
    const text = withRejects(at, finished(laid, says.finish), rejects);
    return { ...version, complaints: at, text, plant: judgeHouse(at, factors, text) };
  });
  const instead = says.instead ?? {};
  const after = under[under.length - 1]!.plant;
  judgeInstead(complaints, after, instead);
  judgeWorkflows(complaints, newest.plant, after);
  const scenario: Scenario = {
    ...title,
    note: says.note ?? "",
    differs: differsFrom(newest.text, says),
    plant: houseOf(under, under[0]!.plant),
    instead,
    rejects,
  };
  return { scenario, versions: under };
}

function rejectsOf({ rejects = 1 }: ScenarioText): Readonly<Record<Workflow, number>> {
  if (typeof rejects === "number") return { pigment: rejects, dye: rejects };
  return { pigment: rejects.pigment ?? 1, dye: rejects.dye ?? 1 };
}

// What a scenario says of things that the file knows on an earlier day, or that it brings along whole.
function knownThen(then: PlantText, whole: LaidOver): LaidOver {
  const sites = kept(whole.sites, (name, site) => {
    const known = own(then.sites, name);
    if (known === undefined) return site.machines !== undefined && site.place !== undefined;
    return true;
  });
  const routes = kept(
    whole.routes,
    (name, route) => own(then.routes, name) !== undefined || route.machines !== undefined,
  );
  const knows = (route: string): boolean =>
    own(then.routes, route) !== undefined || own(routes, route) !== undefined;
  return {
    routes,
    sites: Object.fromEntries(
      Object.entries(sites).map(([name, site]) => [
        name,
        {
          ...site,
          machines: kept(
            site.machines,
            (machine, text) =>
              own(then.sites[name]?.machines, machine) !== undefined || text.kind !== undefined,
          ),
        },
      ]),
    ),
    counterparts: kept(whole.counterparts, (from, to) => knows(from) && knows(to)),
  };
}

// Pad and stenter that prepare cloth also finish it, where the route names no others.
function finished(text: PlantText, which: ScenarioText["finish"]): PlantText {
  if (which === undefined) return text;
  const routes = Object.entries(text.routes).map(([name, route]): [string, RouteText] => {
    const workflow = route.workflow ?? SHIPPED_ROUTES[route.like ?? ""]?.workflow;
    const has = route.finish === "soft" || route.steps?.some(({ role }) => role === "finish");
    if (has === true || (which !== "every" && which !== workflow)) return [name, route];
    const { pretreat, "pretreat-dry": dry } = route.machines;
    const machines = {
      ...(pretreat === undefined ? {} : { finish: pretreat }),
      ...(dry === undefined ? {} : { "finish-dry": dry }),
      ...route.machines,
    };
    return [name, { ...route, finish: "soft", machines }];
  });
  return { ...text, routes: Object.fromEntries(routes) };
}

// A yield that the file gives loses its rejects as often over as the logged ones: y′ = 1 − k (1 − y).
function withRejects(
  complaints: Complaints,
  text: PlantText,
  rejects: Readonly<Record<Workflow, number>>,
): PlantText {
  const sites = Object.entries(text.sites).map(([name, site]): [string, SiteText] => {
    if (site.yield === undefined) return [name, site];
    const left = (arm: Workflow): Share | undefined => {
      const share = site.yield?.[arm];
      const times = rejects[arm];
      if (share === undefined || times === 1) return share;
      const of = (value: number): number => 1 - times * (1 - value);
      const scaled = { value: of(share.value), low: of(share.low), high: of(share.high) };
      if (scaled.low > 0) return { ...scaled, source: `${share.source}; rejects × ${times}` };
      complaints.say(
        ["rejects"],
        "rejects-beyond-area",
        String(times),
        `a multiple that leaves something of the yield of ${arm} at site ${name}, ${share.low} at its low end`,
        "Lower the multiple.",
      );
      return share;
    };
    return [name, { ...site, yield: { pigment: left("pigment"), dye: left("dye") } }];
  });
  return { ...text, sites: Object.fromEntries(sites) };
}

function judgeInstead(
  complaints: Complaints,
  plant: Plant,
  instead: Readonly<Record<string, string>>,
): void {
  const names = Object.keys(plant.routes);
  for (const [from, to] of Object.entries(instead)) {
    const path = ["instead", from];
    for (const route of new Set([from, to])) {
      if (!names.includes(route)) complaints.unknown(path, route, "a route of this file", names);
    }
    const workflow = own(plant.routes, from)?.workflow;
    const other = own(plant.routes, to)?.workflow;
    if (workflow === undefined || other === undefined || workflow === other) continue;
    complaints.say(
      path,
      "instead-of-other-workflow",
      to,
      `a ${workflow} route, as ${from} is one`,
      "Name a route of the same workflow; the other one stands on the other arm already.",
    );
  }
}

// Lots are told apart by the workflow that they took; a scenario cannot turn one into the other.
function judgeWorkflows(complaints: Complaints, before: Plant, after: Plant): void {
  for (const [name, { workflow }] of Object.entries(before.routes)) {
    const now = own(after.routes, name)?.workflow;
    if (now === undefined || now === workflow) continue;
    complaints.say(
      ["routes", name],
      "workflow-turned",
      now,
      `a ${workflow} route still, as lots were logged on it`,
      "Add a route under a name of its own and name it under `counterparts`.",
    );
  }
}

function kept<T>(
  parts: Readonly<Record<string, T>> | undefined,
  keep: (name: string, part: T) => boolean,
): Record<string, T> {
  return Object.fromEntries(Object.entries(parts ?? {}).filter(([name, part]) => keep(name, part)));
}

function own<T>(parts: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return parts !== undefined && Object.hasOwn(parts, name) ? parts[name] : undefined;
}
