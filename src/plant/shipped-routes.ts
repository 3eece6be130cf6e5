/**
 * Routes as a print house would lay them out: which step follows which, and with which recipe. A plant
 * file takes one by `like` and names its machines, or writes out its own `steps`.
 */

/** The two ways to fix a print. */
export type Workflow = "pigment" | "dye";

/** A number with the interval that holds it in 95 of 100 halls, for settings that sources disagree on. */
export interface UsualRange {
  /** Median. */
  readonly value: number;
  /** Low end, above 0. */
  readonly low: number;
  /** High end. */
  readonly high: number;
}

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
  readonly usual?: Readonly<Record<string, number | UsualRange>>;
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
  usual: { readonly steam?: RouteStep["usual"]; readonly wash?: RouteStep["usual"] } = {},
): RoutePlan {
  return {
    workflow: "dye",
    dye: dyeClass,
    words,
    steps: [
      ...prepared(dyeClass, dyeClass),
      { role: "steam", kind: "steamer", usual: usual.steam ?? {} },
      { role: "wash", kind: "wash-range", recipe: `${dyeClass}-wash`, usual: usual.wash ?? {} },
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
  // Own estimate: no figure for prints of acid dye was found. 80 to 93 % of it are fixed, by the dye table of US
  // EPA, 1995, against 60 to 90 % of reactive dye, so less is to be washed off silk, wool and polyamide.
  acid: dye("acid", "acid dye, steamed and washed", {
    wash: { "fresh-water": { value: 20, low: 5, high: 80 } },
  }),
  // Disperse dye is fixed hotter, with superheated steam: common practice, no source. It is rinsed, reduced clear
  // and rinsed: four baths of 4 L/kg. Implementing Decision (EU) 2022/2508, table 1.1, has 5 to 20 L/kg for washing
  // synthetic cloth (from memory), not after printing, so the range goes on beyond.
  disperse: dye("disperse", "disperse dye, steamed hot and washed", {
    steam: { temperature: 175 },
    wash: { "fresh-water": { value: 15, low: 5, high: 45 } },
  }),
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
