// Makes five invented suppliers for a buyer to compare, each a folder with plant file, log and readings, and the
// buyer's mix of orders.
//
//     node examples/make-suppliers.mjs [folder]
//
// None of them exists. The same bytes come out on every machine: whole numbers feed the generator, and nothing is
// rounded that one engine may round otherwise than another.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const MONTHS = ["2025-10", "2025-11", "2025-12", "2026-01", "2026-02", "2026-03", "2026-04"];
MONTHS.push("2026-05", "2026-06", "2026-07", "2026-08", "2026-09");

// `pigment` of a hundred lots go by pigment. `dyeWater` is what its meter shows of a square metre by dye, in m3, and
// hangs on nothing else here, for a meter knows nothing of settings. `wash` is fresh water of the wash in L/kg with both ends.
const SUPPLIERS = [
  {
    // Takes little for a square metre because it prints little dye.
    name: "Ash",
    dyeWater: 0.0056,
    belt: [112, 98, 126],
    seed: 11,
    lots: 96,
    pigment: 84,
    cotton: 70,
    wash: [33, 28, 38],
    humidity: [0.06, 0.045, 0.075],
    boiler: [0.83, 0.8, 0.86],
    readings: "counted",
  },
  {
    // Does well on both routes, and has read its meters.
    name: "Brook",
    dyeWater: 0.00265,
    belt: [95, 85, 105],
    seed: 12,
    lots: 110,
    pigment: 48,
    cotton: 60,
    wash: [13, 11.5, 14.5],
    humidity: [0.12, 0.105, 0.135],
    boiler: [0.91, 0.895, 0.925],
    readings: "counted",
  },
  {
    // Prints mostly dye, with little water.
    name: "Cliff",
    dyeWater: 0.00335,
    belt: [120, 105, 135],
    seed: 13,
    lots: 104,
    pigment: 18,
    cotton: 75,
    wash: [17, 15, 19],
    humidity: [0.1, 0.085, 0.115],
    boiler: [0.89, 0.87, 0.91],
    readings: "counted",
  },
  {
    // Its dye route ends behind the steamer: the wash is done elsewhere and left out.
    name: "Dell",
    dyeWater: 0.001,
    belt: [130, 110, 150],
    seed: 14,
    lots: 90,
    pigment: 40,
    cotton: 65,
    wash: undefined,
    humidity: [0.09, 0.075, 0.105],
    boiler: [0.88, 0.86, 0.9],
    readings: "counted",
  },
  {
    // Gives the same reading every month, many times what its lots come to, and leaves the water of belt and wash to the defaults.
    name: "Eyot",
    dyeWater: 0.0047,
    seed: 15,
    lots: 100,
    pigment: 45,
    cotton: 60,
    wash: "default",
    humidity: [0.08, 0.065, 0.095],
    boiler: [0.86, 0.83, 0.89],
    readings: "estimated",
  },
];

const MIX = `# What the buyer orders in a year: the mix that all suppliers are worked out for. Invented.
millrace_mix: 1
name: orders of the invented buyer, autumn 2025 to summer 2026
strata:
  - { cloth: cotton, route: pigment, share: 30 }
  - { cloth: cotton, route: reactive, share: 34 }
  - { cloth: viscose, route: pigment, share: 16 }
  - { cloth: viscose, route: reactive, share: 20 }
`;

/** Numbers from 0 up to 1 in whole 32-bit steps, by Weyl sequence and integer mixing. */
function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4294967296;
  };
}

const range = ([value, low, high]) => `{ value: ${value}, low: ${low}, high: ${high} }`;

function plantFile({ name, wash, humidity, boiler, belt }) {
  const dyeSteps =
    wash === undefined
      ? `    workflow: dye
    dye: reactive
    steps:
      - { role: pretreat, kind: pad, recipe: reactive-pad }
      - { role: pretreat-dry, kind: stenter-dry }
      - { role: print, kind: printer, recipe: reactive-ink, ink: reactive }
      - { role: steam, kind: steamer }
      - { role: dry, kind: stenter-dry }
    machines: { pretreat: pad, pretreat-dry: stenter, print: printer, steam: steamer, dry: stenter }
`
      : `    like: reactive
    machines:
      pretreat: pad
      pretreat-dry: stenter
      print: printer
      steam: steamer
      wash: wash-range
      squeeze: squeeze
      dry: stenter
`;
  const dyeSettings =
    wash === undefined || wash === "default"
      ? "    settings: { steam.temperature: 102 }\n"
      : `    settings:
      steam.temperature: 102
      wash.fresh-water: { value: ${wash[0]}, low: ${wash[1]}, high: ${wash[2]}, source: flow meter of the range }
`;
  return `# Supplier ${name} is invented, and so are its machines and numbers. Made by examples/make-suppliers.mjs.
millrace: 1
house: Supplier ${name}
sites:
  main:
    place: PRT
    settings:
      hall.temperature: { value: 25, low: 20, high: 30 }
      water.supply-temperature: { value: 16, low: 12, high: 20 }
      boiler.efficiency: ${range(boiler)}
      boiler.condensate-return: { value: 0.7, low: 0.6, high: 0.8 }
      boiler.line-loss: { value: 0.08, low: 0.05, high: 0.11 }
    burner: { fuel: natural-gas }
    boiler: { fuel: natural-gas }
    effluent: municipal
    machines:
      pad:
        kind: pad
        settings: { pickup: { value: 0.75, low: 0.68, high: 0.82 }, power: 5 }
      stenter:
        kind: stenter
        choices: { heat: burner }
        settings:
          exhaust-humidity: ${range(humidity)}
          power: { value: 42, low: 36, high: 48 }
      printer:
        kind: printer
        settings:
          rate: { value: 210, low: 180, high: 240 }
          power: { value: 9, low: 8, high: 10 }
          dryer-power: { value: 24, low: 20, high: 28 }
${belt === undefined ? "" : `          belt-water: ${range(belt)}\n`}      calender:
        kind: calender
        choices: { heat: electric }
        settings: { contact: 2.4, standing: { value: 14, low: 11, high: 17 } }
      steamer: { kind: steamer, settings: { contact: 60, flush: { value: 0.8, low: 0.6, high: 1 } } }
${wash === undefined ? "" : "      wash-range: { kind: wash-range, choices: { sequence: six, heating: injection } }\n      squeeze: { kind: squeeze }\n"}routes:
  pigment-calender:
    like: pigment-calender
    machines: { pretreat: pad, pretreat-dry: stenter, print: printer, fix: calender }
    settings: { fix.fix-temperature: { value: 161, low: 156, high: 166 } }
  reactive:
${dyeSteps}${dyeSettings}meters:
  water: { quantity: water, unit: m3, covers: site }
  power: { quantity: electricity, unit: kWh, covers: site }
`;
}

function logFile({ name, seed, lots, pigment, cotton }) {
  const draw = generator(seed);
  const whole = (low, high) => low + Math.floor((high - low + 1) * draw());
  const rows = ["lot,date,client,fibre,gsm,width_m,length_m,rejected_m,route,coverage_pct"];
  const areas = MONTHS.map(() => ({ pigment: 0, dye: 0 }));
  for (let i = 0; i < lots; i++) {
    const month = Math.floor((i * MONTHS.length) / lots);
    // Lots of each kind are spread evenly, so that the shares are those asked for.
    const byPigment = (i * pigment) % 100 < pigment;
    const isCotton = (i * 37 + 11) % 100 < cotton;
    const length = whole(120, 900);
    const rejected = whole(0, Math.floor(length / 25));
    const day = String(whole(1, 27)).padStart(2, "0");
    areas[month][byPigment ? "pigment" : "dye"] += length;
    rows.push(
      [
        `${name[0]}${String(i + 1).padStart(4, "0")}`,
        `${MONTHS[month]}-${day}`,
        `Brand ${"XYZ"[whole(0, 2)]}`,
        isCotton ? "cotton" : "viscose",
        isCotton ? whole(118, 148) : whole(104, 139),
        "1.50",
        length,
        rejected,
        byPigment ? "pigment-calender" : "reactive",
        whole(30, 95),
      ].join(","),
    );
  }
  return { text: `${rows.join("\n")}\n`, areas };
}

/** What a square metre takes by pigment, in m3 and in kWh of either route; meters show a fifth more, and a base. */
const PIGMENT_WATER = 0.00072;
const POWER = 0.26;
const MORE = 1.18;

function metersFile({ seed, dyeWater, readings }, areas) {
  const draw = generator(seed + 1000);
  const rows = ["meter,from,to,reading,unit"];
  MONTHS.forEach((month, i) => {
    const days = new Date(
      Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0),
    ).getUTCDate();
    const { pigment, dye } = areas[i];
    const printing = 1.5 * (pigment * PIGMENT_WATER + dye * dyeWater);
    const water = (MORE * printing + 0.4 + 0.9 * draw()).toFixed(2);
    const power = Math.round(MORE * 1.5 * POWER * (pigment + dye) + 50 + 120 * draw());
    const [w, p] = readings === "estimated" ? [150, 9000] : [water, power];
    const span = `${month}-01,${month}-${String(days).padStart(2, "0")}`;
    rows.push(`water,${span},${w},m3`, `power,${span},${p},kWh`);
  });
  return `${rows.join("\n")}\n`;
}

const target = process.argv[2] ?? fileURLToPath(new URL("./suppliers/", import.meta.url));
for (const supplier of SUPPLIERS) {
  const folder = join(target, supplier.name.toLowerCase());
  mkdirSync(folder, { recursive: true });
  const { text, areas } = logFile(supplier);
  writeFileSync(join(folder, "plant.yaml"), plantFile(supplier));
  writeFileSync(join(folder, "log.csv"), text);
  writeFileSync(join(folder, "meters.csv"), metersFile(supplier, areas));
}
writeFileSync(join(target, "mix.yaml"), MIX);
