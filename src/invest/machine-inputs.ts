/**
 * Hours of machines, those that an option buys among them, and hours that lots wait beside them, as inputs.
 */

import type { Input, Named } from "./inputs.js";
import type { GivenText, InvestText, OptionText } from "./schema.js";
import type { AddedMachine, MachineCapacity, Study } from "./study.js";

/** How inputs are made. */
export interface Making {
  /** An input of the file. */
  readonly input: (named: Named, given: GivenText) => Input;
  /** An input without doubt. */
  readonly held: (id: string, words: string, value: number) => Input;
}

/**
 * Machines of an option.
 *
 * @param at - start of their ids
 * @param option - the option as written
 * @param making - how inputs are made
 * @returns machines by the one they stand beside
 */
export function addedMachines(
  at: string,
  option: OptionText,
  making: Making,
): ReadonlyMap<string, AddedMachine> {
  return new Map(
    Object.entries(option.adds ?? {}).map(([machine, text]): [string, AddedMachine] => {
      const { hours, availability, speed, standby } = text;
      const id = `${at}.adds.${machine}`;
      const named = (key: string, words: string, unit: string): Named => ({
        id: `${id}.${key}`,
        words: `${words} of added ${machine}`,
        unit,
        ...(key === "availability" ? { limits: [0, 1] as const } : {}),
      });
      const { input, held } = making;
      const fast = named("speed", "speed, as a multiple,", "1");
      return [
        machine,
        {
          hours: input(named("hours", "hours", "h/year"), hours),
          availability: input(named("availability", "availability", "1"), availability),
          speed: speed === undefined ? held(fast.id, fast.words, 1) : input(fast, speed),
          standby:
            standby === undefined
              ? undefined
              : {
                  power: input(named("standby.kw", "standby", "kW"), standby.kw),
                  hours: input(named("standby.hours", "hours of standby", "h/year"), standby.hours),
                  flow:
                    standby.of === undefined || standby.of === "electricity"
                      ? "electricity"
                      : `fuel.${standby.of}`,
                },
        },
      ];
    }),
  );
}

/**
 * Hours of the machines that are there.
 *
 * @param text - as written
 * @param making - how inputs are made
 * @returns capacity by machine
 */
export function capacities(
  text: InvestText["capacity"],
  making: Making,
): ReadonlyMap<string, MachineCapacity> {
  return new Map(
    Object.entries(text).map(([machine, { hours, availability }]): [string, MachineCapacity] => {
      const id = `capacity.${machine}`;
      return [
        machine,
        {
          hours: making.input(
            { id: `${id}.hours`, words: `hours of ${machine}`, unit: "h/year" },
            hours,
          ),
          availability: making.input(
            {
              id: `${id}.availability`,
              words: `availability of ${machine}`,
              unit: "1",
              limits: [0, 1],
            },
            availability,
          ),
        },
      ];
    }),
  );
}

/**
 * Hours that lots wait beside machines.
 *
 * @param text - as written
 * @param making - how inputs are made
 * @returns by route, what the file gives
 */
export function waitsOf(text: InvestText["waits"], making: Making): Study["waits"] {
  const of = (route: "dye" | "pigment", what: "batching" | "store"): Input | undefined => {
    const given = text?.[route]?.[what];
    const words = what === "batching" ? "wait for a batch" : "time in store";
    return given === undefined
      ? undefined
      : making.input(
          { id: `waits.${route}.${what}`, words: `${words}, ${route}`, unit: "h" },
          given,
        );
  };
  const route = (name: "dye" | "pigment") => ({
    batching: of(name, "batching"),
    store: of(name, "store"),
  });
  return { dye: route("dye"), pigment: route("pigment") };
}
