/**
 * Everything a study finds, for the report.
 */

import { type AfterWash, afterWashOf } from "./after-wash.js";
import { type DrawnOption, drawnOptions, type Order, orderOf } from "./doubt.js";
import {
  type BreakEven,
  breakEvensOf,
  type IsoPoint,
  isoWorth,
  type ModelPart,
  modelPartsOf,
  type WorthSwing,
  worthSwings,
} from "./drivers.js";
import { type DrainCod, drainCod } from "./drain.js";
import { type DueAnyway, dueAnyway, withoutSpared } from "./due-anyway.js";
import { type ByTag, worthByTag } from "./evidence.js";
import { type CoveredYear, type LeaseBeside, leaseOf, loanOf } from "./finance.js";
import { type InkLitres, inkLitres } from "./ink-volume.js";
import { type LeadTime, leadTimes } from "./lead-time.js";
import { type MachineUse, machineUses, type Need, needsOf } from "./machine-use.js";
import { type Measures, measuresOf } from "./measures.js";
import type { Study, StudyOption } from "./study.js";
import { type WhatIf, whatIfsOf } from "./what-ifs.js";

/** An option with all that was found of it. */
export interface FoundOption {
  /** The option. */
  readonly option: StudyOption;
  /** Measures at central values. */
  readonly measures: Measures;
  /** In all worlds. */
  readonly drawn: DrawnOption;
  /** Present value by what it rests on. */
  readonly tags: ByTag;
}

/** What a study finds. */
export interface Findings {
  /** The study. */
  readonly study: Study;
  /** Options but the one to carry on, in the order of the file. */
  readonly options: readonly FoundOption[];
  /** The option that the report is about. */
  readonly project: FoundOption;
  /** How often each option comes first. */
  readonly order: readonly Order[];
  /** Where inputs turn the worth of the project. */
  readonly breakEvens: readonly BreakEven[];
  /** How far inputs move it. */
  readonly swings: readonly WorthSwing[];
  /** Headings under which the doubt of the model of the hall falls, the widest first. */
  readonly modelParts: readonly ModelPart[];
  /** Questions answered. */
  readonly whatIfs: readonly WhatIf[];
  /** Lines of equal worth over order book and price of pigment ink; empty without such a price. */
  readonly lines: readonly { readonly worth: number; readonly points: readonly IsoPoint[] }[];
  /** Loan of the project. */
  readonly loan: { readonly sum: number; readonly years: readonly CoveredYear[] } | undefined;
  /** Lease of the project. */
  readonly lease: LeaseBeside | undefined;
  /** Use of machines by the project in the first year in which all have moved. */
  readonly uses: readonly MachineUse[];
  /** The same in that year if one carries on. */
  readonly usesBefore: readonly MachineUse[];
  /** Use of machines in the last year of every option, the one to carry on first. */
  readonly lastUses: readonly { readonly name: string; readonly uses: readonly MachineUse[] }[];
  /** Whether machines that the project buys are needed for the volume. */
  readonly needs: readonly Need[];
  /** COD at the drain of every option, the one to carry on first, in its last year or that of the project. */
  readonly strengths: readonly DrainCod[];
  /** How often each option comes first by worth, as if one carried on once it has lived. */
  readonly orderByWorth: readonly Order[];
  /** What options that move lots bring on top of an improved wash range. */
  readonly afterWash: readonly AfterWash[];
  /** What carrying on has to lay out over the life of the project. */
  readonly due: DueAnyway;
  /** Worth of every option if carrying on had nothing to lay out. */
  readonly unspared: ReadonlyMap<string, number>;
  /** Litres of pigment ink by option, the one to carry on first. */
  readonly litres: readonly InkLitres[];
  /** How long lots take. */
  readonly lead: { readonly dye: LeadTime; readonly pigment: LeadTime };
}

/** Worlds for side questions; the main figures use all. */
export const SIDE_DRAWS = 500;

/** Order books of the lines of equal worth. */
const LEVELS = Array.from({ length: 25 }, (_, i) => 0.3 + 0.05 * i);

/**
 * Works a study out.
 *
 * @param study - the study
 * @returns what it finds
 */
export function findingsOf(study: Study): Findings {
  const drawn = drawnOptions(study, study.options, study.draws);
  const options = study.options.map((option, i): FoundOption => {
    const measures = measuresOf(study, option);
    return { option, measures, drawn: drawn[i]!, tags: worthByTag(study, option, measures.gain) };
  });
  const project = options.find(({ option }) => option.name === study.project.name);
  if (project === undefined) throw new Error("The project is not among the options.");
  const side = Math.min(study.draws, SIDE_DRAWS);
  const { option, measures } = project;
  const ink = "prices.ink.pigment";
  const far = Math.round(Math.abs(measures.outlay) / 2 / 1000) * 1000;
  return {
    study,
    options,
    project,
    order: orderOf(study.carryOn.name, drawn),
    breakEvens: breakEvensOf(study, option),
    swings: worthSwings(study, option, side),
    modelParts: modelPartsOf(study, option, side),
    whatIfs: whatIfsOf(study, option, side),
    lines: study.inputs.has(ink)
      ? [0, far, -far].map((worth) => ({
          worth,
          points: isoWorth(study, option, ink, LEVELS, worth),
        }))
      : [],
    loan: loanOf(study, option, side),
    lease: leaseOf(study, option),
    uses: machineUses(study, option, measures.steady.year, side),
    usesBefore: machineUses(study, study.carryOn, measures.steady.year, side),
    lastUses: [study.carryOn, ...study.options].map((one) => ({
      name: one.name,
      uses: machineUses(study, one, one.text.life, side),
    })),
    needs: needsOf(study, option, side),
    strengths: [study.carryOn, ...study.options].map((one) =>
      drainCod(study, one, Math.min(one.text.life, option.text.life), side),
    ),
    orderByWorth: orderOf(study.carryOn.name, drawn, "worth"),
    afterWash: afterWashOf(study, side),
    due: dueAnyway(study, option.text.life),
    unspared: withoutSpared(study),
    litres: inkLitres(study),
    lead: leadTimes(study, option, measures.steady.year, side),
  };
}
