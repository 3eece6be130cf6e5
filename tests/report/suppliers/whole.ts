/** A comparison of three invented suppliers, one of them with a hole in its boundary. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  compareSuppliers,
  type SuppliersCompared,
} from "../../../src/suppliers/compare-suppliers.js";
import { readMix } from "../../../src/suppliers/reference.js";
import type { Given } from "../../../src/suppliers/candidate.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { TOP } from "../../tools/tree.js";
import { houseOf } from "../../suppliers/made.js";

const MIX = readMix({
  name: "mix.yaml",
  text: "millrace_mix: 1\nname: half and half\nstrata:\n  - { route: pigment, share: 40 }\n  - { route: dye, share: 60 }",
}).value!;

const settings = (water: number) => ({
  "wash-range.fresh-water": { value: water, low: 0.9 * water, high: 1.1 * water },
  "printer.belt-water": 100,
});

function holed({ alias, pack }: Given): Given {
  const routes = pack.boundary.routes.map((route) => ({
    ...route,
    steps: route.steps.filter(({ role }) => role !== "wash"),
  }));
  return { alias, pack: { ...pack, boundary: { ...pack.boundary, routes } } };
}

/** Suppliers of the comparison. */
export const GIVEN: readonly Given[] = [
  houseOf("Supplier Ash", { lots: [20, 5], settings: settings(40) }),
  houseOf("Supplier Brook", { lots: [8, 16], settings: settings(14) }),
  holed(houseOf("Supplier Dell", { lots: [9, 14], settings: settings(20) })),
];

/** The comparison. */
export const COMPARED: SuppliersCompared = compareSuppliers(GIVEN, {
  shipped: SHIPPED,
  mix: MIX,
  asOf: "2026-11-25",
  draws: 200,
  seed: 1,
  ids: ["water", "energy"],
});

/** The template. */
export const TEMPLATE = readFileSync(join(TOP, "templates", "suppliers.md"), "utf8");
