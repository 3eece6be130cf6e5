/**
 * What is in and out of the count of each supplier, in the same words for all.
 */

import type { Pack } from "./schema.js";

/** What a step is for. */
export const DUTIES = [
  ...(["preparation", "pretreatment", "printing", "dry fixation", "steaming", "washing"] as const),
  ...(["drying", "finishing"] as const),
] as const;

/** What a step is for. */
export type Duty = (typeof DUTIES)[number];

type Route = Pack["boundary"]["routes"][number];

/** Duties without which cloth of a workflow is not printed and fixed. */
const NEEDED: Readonly<Record<Route["workflow"], readonly Duty[]>> = {
  pigment: ["printing", "dry fixation"],
  dye: ["printing", "steaming", "washing", "drying"],
};

const BY_KIND: Readonly<Record<string, Duty>> = {
  preparation: "preparation",
  printer: "printing",
  steamer: "steaming",
  "wash-range": "washing",
  "stenter-cure": "dry fixation",
  oven: "dry fixation",
  calender: "dry fixation",
};

const BY_ROLE: readonly (readonly [RegExp, Duty])[] = [
  [/^pre|^pad/, "pretreatment"],
  [/^steam/, "steaming"],
  [/^wash|^soap|^rins/, "washing"],
  [/^fix|^cure|^curing/, "dry fixation"],
  [/^print/, "printing"],
  [/^finish|^soft/, "finishing"],
  [/^dry|^squeeze/, "drying"],
];

/**
 * What each step of a route is for. A step at a partner house is told by its role.
 *
 * @param route - the route
 * @returns duty by role; steps that store cloth have none
 */
export function dutiesOf(route: Pick<Route, "workflow" | "steps">): ReadonlyMap<string, Duty> {
  const print = route.steps.findIndex(({ kind }) => kind === "printer");
  const finish = route.steps.findIndex(({ role }) => /^finish|^soft/.test(role));
  const duties = new Map<string, Duty>();
  route.steps.forEach(({ role, kind }, at) => {
    if (kind === "stored") return;
    const known = BY_KIND[kind];
    if (known !== undefined) duties.set(role, known);
    else if (kind === "outsourced")
      duties.set(role, BY_ROLE.find(([word]) => word.test(role))?.[1] ?? "finishing");
    else if (at < print || print < 0) duties.set(role, "pretreatment");
    else if (finish >= 0 && at >= finish) duties.set(role, "finishing");
    else duties.set(role, "drying");
  });
  return duties;
}

/** Whether a duty is counted: in the house, at a partner, or not at all. */
export type Counted = "in" | "partner" | "out";

/**
 * Which duties a route counts.
 *
 * @param route - the route
 * @returns an answer for each duty; `partner` where all steps for it are done elsewhere
 */
export function countedOf(
  route: Pick<Route, "workflow" | "steps">,
): Readonly<Record<Duty, Counted>> {
  const duties = dutiesOf(route);
  const answer = (duty: Duty): Counted => {
    const steps = route.steps.filter(({ role }) => duties.get(role) === duty);
    if (steps.length === 0) return "out";
    return steps.every(({ partner }) => partner) ? "partner" : "in";
  };
  return Object.fromEntries(DUTIES.map((duty) => [duty, answer(duty)])) as Record<Duty, Counted>;
}

/**
 * Duties that a route needs and does not count: cloth leaves it neither printed nor fixed.
 *
 * @param route - the route
 * @returns the holes
 */
export function holesOf(route: Pick<Route, "workflow" | "steps">): readonly Duty[] {
  const counted = countedOf(route);
  return NEEDED[route.workflow].filter((duty) => counted[duty] === "out");
}

/**
 * Duties that are left out for all, because one route of the same class does not count them.
 *
 * @param routes - routes of one class, of all suppliers, those with holes apart
 * @returns duties that some count and some do not
 */
export function leftOutOf(routes: readonly Pick<Route, "workflow" | "steps">[]): ReadonlySet<Duty> {
  const counted = routes.map(countedOf);
  return new Set(
    DUTIES.filter((duty) => {
      const out = counted.filter((one) => one[duty] === "out").length;
      return out > 0 && out < counted.length;
    }),
  );
}
