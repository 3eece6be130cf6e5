/** Steps and practices in the page. */

import type { Block, Cell } from "../../src/report/document.js";
import { numberCell, textCell } from "../../src/report/figure-desk.js";
import { fabricWords, head, paragraph, PRACTICE_WORDS, practisedCells, three } from "./cells.js";
import { MOVED_SETTINGS, PRACTICES } from "./practice.js";
import { CARRIERS, type Carrier, type Compared, type StepResult } from "./results.js";

const UNITS: Readonly<Record<Carrier, string>> = {
  water: "Water, L/kg",
  heat: "Heat, kWh/kg",
  electricity: "Electricity, kWh/kg",
};

/**
 * Water, heat and electricity of every step and route on every fabric.
 *
 * @param steps - the steps
 * @param compared - ours beside every range, to say which steps have none
 * @returns blocks
 */
export function stepBlocks(
  steps: readonly StepResult[],
  compared: readonly Compared[],
): readonly Block[] {
  const bare = steps
    .filter(({ step }) => !compared.some((row) => holds(row, step.steps)))
    .map(({ step }) => step.words.toLowerCase());
  return [
    paragraph(
      "Per kilogram of conditioned cloth, at the fence of the site: water drawn with that for steam and softening, heat as fuel with the losses of the boiler, electricity with pumps and water works.",
    ),
    ...(bare.length === 0
      ? []
      : [paragraph(`No published range of their own was found for: ${bare.join("; ")}.`)]),
    ...steps.map(({ step, fabrics }): Block => {
      return {
        kind: "table",
        id: `step-${step.id}`,
        caption: `${step.words}: ${CARRIERS.join(", ")} on every fabric.`,
        behind: true,
        head: head(
          ["Fabric", "Per kg of cloth"],
          [...PRACTICES.map((practice) => PRACTICE_WORDS[practice]), "95 % interval as usual"],
        ),
        rows: fabrics.flatMap(({ fabric, of }) =>
          CARRIERS.filter((carrier) =>
            Object.values(of[carrier].at).some((value) => value > 0),
          ).map((carrier): readonly Cell[] => [
            textCell(fabricWords(fabric), true),
            textCell(UNITS[carrier]),
            ...practisedCells(of[carrier]),
          ]),
        ),
        widths: [2, 2, 1, 1, 1, 1.6],
      };
    }),
  ];
}

function holds(
  { beside: { measure } }: Compared,
  { on, roles }: StepResult["step"]["steps"],
): boolean {
  if (measure.of === "settings") return false;
  const shared = roles?.every((role) => SHARED.has(role)) ?? false;
  return (measure.on === on || shared) && String(measure.roles ?? []) === String(roles ?? []);
}

/** Roles that are the same on all routes of the hall. */
const SHARED = new Set(["pretreat", "pretreat-dry", "print"]);

/**
 * Settings of the three ways to run the hall.
 *
 * @returns blocks
 */
export function practiceBlocks(): readonly Block[] {
  return [
    paragraph(
      "All settings of the table are moved at once, so the two ways are far apart: a hall that is poor, or good, at everything. What is not in the table stays as it ships: machines, speeds, recipes, temperatures, ink. “95 % ends” are the ends of the 95 % interval of the shipped factor.",
    ),
    {
      kind: "table",
      id: "practices",
      caption: "Settings that are moved, and what they are set to.",
      head: [
        ...head(
          ["Setting"],
          PRACTICES.map((practice) => PRACTICE_WORDS[practice]),
        ),
        ...head(["Unit", "From"]),
      ],
      rows: MOVED_SETTINGS.map(({ id, unit, values, why }): readonly Cell[] => [
        textCell(id, true),
        ...PRACTICES.map((practice) => numberCell(three(values[practice]))),
        textCell(unit === "1" ? "–" : unit),
        textCell(why),
      ]),
      widths: [2.6, 1, 1, 1, 1, 4],
    },
  ];
}
