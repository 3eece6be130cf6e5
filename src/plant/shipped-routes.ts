/**
 * Routes as a print house would lay them out: which step follows which, and with which recipe. A plant
 * file takes one by `like` and names its machines, or writes out its own `steps`.
 */

/** The two ways to fix a print. */
export type Workflow = "pigment" | "dye";

/** One step of a route before machines are named. */
export interface RouteStep {
  /** Name of the step inside its route. */
  readonly role: string;
  /** Kind of step: a key of the table of step kinds. */
  readonly kind: string;
  /** Recipe it uses: `recipe.NAME.*` of the factors. */
  readonly recipe?: string;
  /** Ink it prints: `ink.NAME.water` of the factors. */
  readonly ink?: string;
  /** Settings that differ from the default of the step's kind, where the trade runs it otherwise here. */
  readonly usual?: Readonly<Record<string, number>>;
}

/** A route before machines are named. */
export interface RoutePlan {
  /** Workflow it belongs to. */
  readonly workflow: Workflow;
  /** Dye class of a dye route. */
  readonly dye?: DyeClass;
  /** In plain words, for reports. */
  readonly words: string;
  /** Steps in order. */
  readonly steps: readonly RouteStep[];
}

/** Classes of dye, by the fibres they colour. */
export type DyeClass = "reactive" | "acid" | "disperse";

const prepared = (recipe: string, ink: string): readonly RouteStep[] => [
  { role: "pretreat", kind: "pad", recipe: `${recipe}-pad` },
  { role: "pretreat-dry", kind: "stenter-dry" },
  // Prepared cloth is batched before printing: common practice, no source.
  { role: "pretreat-store", kind: "stored" },
  { role: "print", kind: "printer", recipe: `${ink}-ink`, ink },
];

const STORE: RouteStep = { role: "store", kind: "stored" };

function pigment(words: string, kind: string): RoutePlan {
  return {
    workflow: "pigment",
    words,
    steps: [...prepared("pigment", "pigment"), { role: "fix", kind }, STORE],
  };
}

function dye(
  dyeClass: DyeClass,
  words: string,
  steamer: Readonly<Record<string, number>> = {},
): RoutePlan {
  return {
    workflow: "dye",
    dye: dyeClass,
    words,
    steps: [
      ...prepared(dyeClass, dyeClass),
      { role: "steam", kind: "steamer", usual: steamer },
      { role: "wash", kind: "wash-range", recipe: `${dyeClass}-wash` },
      { role: "squeeze", kind: "squeeze" },
      { role: "dry", kind: "stenter-dry" },
      STORE,
    ],
  };
}

/** Steps added after the rest by `finish: soft`: softener or fixer pad and stenter at 160 °C. */
export const FINISH: readonly RouteStep[] = [
  { role: "finish", kind: "pad", recipe: "finish-pad" },
  {
    role: "finish-dry",
    kind: "stenter-dry",
    usual: { "cloth-out": 160, "exhaust-temperature": 165, "moisture-out": 0.01 },
  },
  { role: "finish-store", kind: "stored" },
];

/** Routes that come with the tool, by name. */
export const SHIPPED_ROUTES: Readonly<Record<string, RoutePlan>> = {
  "pigment-calender": pigment("pigment, fixed by dry heat on a calender", "calender"),
  "pigment-stenter": pigment("pigment, fixed by dry heat on a stenter", "stenter-cure"),
  reactive: dye("reactive", "reactive dye, steamed and washed"),
  acid: dye("acid", "acid dye, steamed and washed"),
  // Disperse dye is fixed hotter, with superheated steam: common practice, no source.
  disperse: dye("disperse", "disperse dye, steamed hot and washed", { temperature: 175 }),
};

/** Dye class that colours a fibre; a fibre that is not here has no counterpart. */
export const DYE_OF_FIBRE: Readonly<Record<string, DyeClass>> = {
  cotton: "reactive",
  viscose: "reactive",
  modal: "reactive",
  lyocell: "reactive",
  flax: "reactive",
  hemp: "reactive",
  silk: "acid",
  wool: "acid",
  polyamide: "acid",
  polyester: "disperse",
};
