/**
 * Questions an owner asks, each answered by the worth of the option in worlds where that one thing is otherwise and
 * all else is drawn as before.
 */

import { drawnOptions, type DrawnOption } from "./doubt.js";
import { gainOf } from "./gain.js";
import { atOwnSpeed } from "./machine-time.js";
import type { DatedTariff, Study, StudyOption } from "./study.js";
import { centralWorld } from "./world.js";

/** A question answered. */
export interface WhatIf {
  /** Stable code of the question. */
  readonly code:
    | "fewer-orders"
    | "half-may-move"
    | "gas-halves"
    | "gas-doubles"
    | "ink-tenth-dearer"
    | "rejects-double"
    | "no-hours-saved"
    | "worth-nothing-at-end"
    | "tariff-otherwise"
    | "tariff-by-volume"
    | "tariff-by-strength"
    | "exhaust-due-anyway"
    | "own-speed"
    | "nothing-leaves"
    | "carry-on-pays-nothing"
    | "neither-pays";
  /** Worth at central values. */
  readonly central: number;
  /** Litres of pigment ink a year once all have moved, at central values. */
  readonly litres: number;
  /** The option in drawn worlds. */
  readonly drawn: DrawnOption;
}

/**
 * Answers the questions that apply.
 *
 * @param study - the study
 * @param option - the option
 * @param draws - number of worlds
 * @returns answers in the order they are asked
 */
export function whatIfsOf(study: Study, option: StudyOption, draws: number): readonly WhatIf[] {
  const answer = (
    code: WhatIf["code"],
    held: readonly (readonly [string, number])[],
    other: Study = study,
    one: StudyOption = option,
  ): WhatIf | undefined => {
    if (held.some(([id]) => !other.inputs.has(id))) return undefined;
    const map = new Map(held);
    const [drawn] = drawnOptions(other, [one], draws, map);
    if (drawn === undefined) return undefined;
    const { worth, option: cost } = gainOf(other, one, centralWorld(map));
    const full = Math.min(one.text.life, Math.max(1, one.rampup.length));
    const litres = cost.quantities.get("ink.pigment")?.[full] ?? 0;
    return { code, central: worth, litres, drawn };
  };
  const times = (id: string, by: number): readonly (readonly [string, number])[] => [
    [id, (study.inputs.get(id)?.central ?? 0) * by],
  ];
  const fuels = [...study.inputs.keys()].filter((id) => /^prices\.fuel\.[^.]+$/.test(id));
  const fuel = (by: number): readonly (readonly [string, number])[] =>
    fuels.flatMap((id) => times(id, by));
  const rejects = `options.${option.name}.rejects`;
  const { otherTariff, carryOn } = study;
  const spared = { ...study, carryOn: { ...carryOn, capital: [] } };
  const faster = atOwnSpeed(option);
  return [
    answer("fewer-orders", times("orders.level", 0.7)),
    answer("half-may-move", times("moves.all", 0.5)),
    ...(fuels.length === 0
      ? []
      : [answer("gas-halves", fuel(0.5)), answer("gas-doubles", fuel(2))]),
    answer("ink-tenth-dearer", times("prices.ink.pigment", 1.1)),
    answer("rejects-double", times(rejects, 2)),
    answer("no-hours-saved", [["stays.labour", 1]]),
    answer(
      "nothing-leaves",
      [...study.stays.values()].map(({ id }) => [id, 1] as const),
    ),
    ...(option.residual === undefined
      ? []
      : [answer("worth-nothing-at-end", [], study, { ...option, residual: undefined })]),
    ...(otherTariff === undefined
      ? []
      : [
          answer("tariff-otherwise", [], {
            ...study,
            effluent: { ...study.effluent, tariffs: [otherTariff] },
          }),
        ]),
    ...tariffsAlone(study).map(([code, tariff]) =>
      answer(code, [], { ...study, effluent: { ...study.effluent, tariffs: [tariff] } }),
    ),
    ...(faster === undefined ? [] : [answer("own-speed", [], study, faster)]),
    ...(option.capital.some(({ kind }) => kind === "exhaust")
      ? [
          answer("exhaust-due-anyway", [], study, {
            ...option,
            capital: option.capital.filter(({ kind }) => kind !== "exhaust"),
          }),
        ]
      : []),
    answer("carry-on-pays-nothing", [], spared),
    answer("neither-pays", [], spared, withoutAnyway(study, option)),
  ].flatMap((each) => (each === undefined ? [] : [each]));
}

// Where the tariff goes from volume to strength or back, each of them from the first day on.
function tariffsAlone({
  effluent: { tariffs },
  otherTariff,
}: Study): readonly (readonly ["tariff-by-volume" | "tariff-by-strength", DatedTariff])[] {
  const dated = [...tariffs].sort((a, b) => (a.from < b.from ? -1 : 1));
  const volume = dated.filter(({ tariff }) => tariff.form === "volume").at(-1);
  const strength = dated.filter(({ tariff }) => tariff.form !== "volume").at(-1);
  const from = dated[0]?.from ?? "";
  if (otherTariff !== undefined || volume === undefined || strength === undefined) return [];
  return [
    ["tariff-by-volume", { ...volume, from }],
    ["tariff-by-strength", { ...strength, from }],
  ];
}

/**
 * An option without what it pays of the same kinds as carrying on does, from year 1 on: its own basin, its own repairs.
 *
 * @param study - what carrying on pays
 * @param option - the option
 * @returns the option without those lines
 */
export function withoutAnyway(study: Study, option: StudyOption): StudyOption {
  const kinds = new Set(study.carryOn.capital.map(({ kind }) => kind));
  return {
    ...option,
    capital: option.capital.filter(({ kind, year }) => year === 0 || !kinds.has(kind)),
  };
}
