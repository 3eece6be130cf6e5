/** A plant file with places for one's own lines, and the faults found in it. */

import { readPlant } from "../../src/plant/read-plant.js";
import type { Problem } from "../../src/problems/problem.js";
import { SHIPPED } from "../tools/shipped-factors.js";

/** What may be changed in the file. */
export interface Changes {
  readonly place?: string;
  readonly site?: string;
  readonly padSettings?: string;
  readonly calenderKind?: string;
  readonly calenderChoices?: string;
  readonly like?: string;
  readonly fix?: string;
  readonly settings?: string;
  readonly choices?: string;
  readonly more?: string;
}

/** The file as text. */
export function plantFile(changes: Changes = {}): string {
  return `millrace: 1
house: House of faults (invented)
sites:
  main:
    place: ${changes.place ?? "PRT"}
    ${changes.site ?? "burner: { fuel: natural-gas }"}
    machines:
      pad: { kind: pad, settings: { ${changes.padSettings ?? "power: 5"} } }
      stenter: { kind: stenter }
      printer: { kind: printer }
      calender: { kind: ${changes.calenderKind ?? "calender"}, choices: { ${changes.calenderChoices ?? "heat: oil"} } }
routes:
  pigment:
    like: ${changes.like ?? "pigment-calender"}
    machines:
      pretreat: pad
      pretreat-dry: stenter
      print: printer
      ${changes.fix ?? "fix: calender"}
    settings: { ${changes.settings ?? "fix.dwell: 30"} }
    choices: { ${changes.choices ?? "pretreat-dry.heat: burner"} }
${changes.more ?? ""}`;
}

/** Faults of a file. */
export function faultsOf(text: string): readonly Problem[] {
  return readPlant({ name: "plant.yaml", text }, SHIPPED).problems;
}

/** The only fault of a file. */
export function faultOf(changes: Changes): Problem {
  const [first, ...others] = faultsOf(plantFile(changes));
  if (first === undefined || others.length > 0) {
    throw new Error(`${others.length + (first === undefined ? 0 : 1)} faults instead of one`);
  }
  return first;
}

/** Line of the file on which a text stands, counted from 1. */
export function lineOf(changes: Changes, text: string): number {
  return (
    plantFile(changes)
      .split("\n")
      .findIndex((line) => line.includes(text)) + 1
  );
}
