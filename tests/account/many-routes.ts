/** A mill with every shipped route and every kind of step, to try laws on that must hold for all. */

import type { Lot } from "../../src/log/lot.js";
import { EXACT_MILL, exactly, type MillFile, PLAIN_LOT } from "./exact-mill.js";

const DYE_MACHINES = {
  pretreat: "pad",
  "pretreat-dry": "gas stenter",
  print: "printer",
  steam: "steamer",
  wash: "range",
  squeeze: "nip",
  dry: "steam stenter",
} as const;

const PIGMENT_MACHINES = { pretreat: "pad", "pretreat-dry": "gas stenter", print: "printer" };

const STEPS = [
  { role: "prepare", kind: "preparation" },
  { role: "pretreat", kind: "pad", recipe: "pigment-pad" },
  { role: "pretreat-dry", kind: "hot-flue" },
  { role: "print", kind: "printer", recipe: "pigment-ink", ink: "pigment" },
  { role: "fix", kind: "oven" },
  { role: "rinse", kind: "tumbler" },
  { role: "slot", kind: "vacuum-slot" },
  { role: "partner", kind: "outsourced" },
  { role: "store", kind: "stored" },
] as const;

const STEP_MACHINES = {
  prepare: "preparation",
  pretreat: "pad",
  "pretreat-dry": "flue",
  print: "printer",
  fix: "oven",
  rinse: "tumbler",
  slot: "slot",
  partner: "partner",
} as const;

/** Shipped factors in all their doubt; only zeros that would hide a term are set. */
export const MANY_ROUTES: MillFile = {
  millrace: 1,
  house: "House of all steps (invented)",
  sites: {
    main: {
      place: "DEU",
      settings: exactly({
        "wash-range.recovery": 0.3,
        "wash-range.fill": 500,
        "wash-range.fills-per-lot": 0.5,
        "stenter-dry.recovery": 0.2,
        "stenter-cure.recovery": 0.1,
        "tumbler.soak": 6,
      }),
      machines: {
        ...(EXACT_MILL.sites.main["machines"] as object),
        preparation: { kind: "preparation" },
        flue: { kind: "hot-flue", choices: { heat: "oil" } },
        oven: { kind: "oven", choices: { heat: "electric" } },
        tumbler: { kind: "tumbler", choices: { heat: "burner", entry: "soaked" } },
        slot: { kind: "vacuum-slot" },
        partner: { kind: "outsourced" },
      },
    },
  },
  routes: {
    "pigment-calender": {
      like: "pigment-calender",
      machines: { ...PIGMENT_MACHINES, fix: "calender" },
    },
    "pigment-stenter": {
      like: "pigment-stenter",
      machines: {
        ...PIGMENT_MACHINES,
        fix: "gas stenter",
        finish: "pad",
        "finish-dry": "gas stenter",
      },
      finish: "soft",
    },
    "pigment-burner": {
      like: "pigment-calender",
      machines: { ...PIGMENT_MACHINES, fix: "calender" },
      choices: { "fix.heat": "burner", "pretreat-dry.heat": "steam-coil" },
    },
    longest: { workflow: "pigment", steps: STEPS, machines: STEP_MACHINES },
    reactive: { like: "reactive", machines: DYE_MACHINES },
    // Same machines and roles as reactive, other boxes: nothing but the choice sets them apart.
    acid: {
      like: "acid",
      machines: DYE_MACHINES,
      choices: { "wash.sequence": "counter-current", "wash.heating": "coil" },
    },
    disperse: {
      like: "disperse",
      machines: DYE_MACHINES,
      choices: { "wash.sequence": "four", "steam.superheat": "oil" },
    },
  },
};

/** Fibres and blends that lots of the house are made of. */
export const CLOTHS: readonly Lot["fibre"][] = [
  [{ fibre: "cotton", share: 1 }],
  [{ fibre: "silk", share: 1 }],
  [{ fibre: "polyester", share: 1 }],
  [
    { fibre: "cotton", share: 0.6 },
    { fibre: "polyester", share: 0.4 },
  ],
];

/** Lots of every route and fibre that has a counterpart, bare and fully logged in turn. */
export const MANY_LOTS: readonly Lot[] = CLOTHS.flatMap((fibre, i) =>
  Object.keys(MANY_ROUTES.routes).flatMap((route, j): readonly Lot[] => {
    const lot: Lot = {
      ...PLAIN_LOT,
      lot: `${i}-${j}`,
      route,
      fibre,
      length: 700 + 30 * i + 10 * j,
      gsm: 90 + 25 * i,
    };
    const logged = {
      ink: 11,
      pickup: 0.66,
      fixTemp: 158,
      dwell: 55 + j,
      liquorRatio: 5,
      baths: 4,
    } as const;
    return [
      lot,
      { ...lot, ...logged, lot: `${i}-${j}-logged` },
      { ...lot, lot: `${i}-${j}-half`, coverage: 0.3, speed: 21, baths: 5 },
    ];
  }),
);
