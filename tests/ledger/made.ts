import fc from "fast-check";
import type { Ledger, SavedLedger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import type { Plant, PlantRoute } from "../../src/plant/plant.js";
import { SHIPPED_ROUTES } from "../../src/plant/shipped-routes.js";

function route(name: string, printWidth?: number): PlantRoute {
  const plan = SHIPPED_ROUTES[name];
  if (plan === undefined) throw new Error(`no route ${name}`);
  return {
    name,
    ...{ workflow: plan.workflow, dye: plan.dye, words: plan.words, printWidth },
    steps: plan.steps.map((step) => ({ ...step, machine: "", settings: {}, choices: {} })),
  };
}

/** A print house of three routes; the pigment one prints 1.4 m at most. */
export const PLANT: Plant = {
  house: "Weir Lane Prints (invented)",
  gwp: "AR6",
  sites: {},
  routes: {
    "pigment-calender": route("pigment-calender", 1.4),
    reactive: route("reactive"),
    disperse: route("disperse"),
  },
  counterparts: {},
  text: { millrace: 1, house: "Weir Lane Prints (invented)", sites: {}, routes: {} },
};

/**
 * A sound lot.
 *
 * @param changes - what differs from 200 m of cotton, 1.5 m wide
 * @returns the lot
 */
export function lotOf(changes: Partial<Lot> = {}): Lot {
  return {
    ...{ lot: "L-1", date: "2026-03-14", site: "main", client: "Client Elm", order: "O-1" },
    ...{ fabric: "cotton poplin", fibre: [{ fibre: "cotton", share: 1 }], gsm: 140 },
    ...{ width: 1.5, length: 200, rejected: undefined, route: "reactive", kind: "production" },
    ...{ ink: undefined, coverage: undefined, pickup: undefined, fixTemp: undefined },
    ...{ dwell: undefined, liquorRatio: undefined, baths: undefined, speed: undefined },
    readings: { electricity: undefined, water: undefined, gas: undefined, steam: undefined },
    fastness: { rubDry: undefined, rubWet: undefined, wash: undefined },
    ...{ reprintOf: "", note: "", place: { file: "log.csv", line: 2 } },
    ...changes,
  };
}

const open = (min: number, max: number): fc.Arbitrary<number | undefined> =>
  fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined });

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

const halfGrade = fc.option(
  fc.integer({ min: 2, max: 10 }).map((double) => double / 2),
  { nil: undefined },
);

/** Lots of every kind, logged more or less fully. The name is left to the test. */
export const anyLot: fc.Arbitrary<Lot> = fc
  .record({
    date: fc.constantFrom("2026-02-03", "2026-03-14", "2026-03-31"),
    client: fc.constantFrom("Client Elm", "Client Hazel"),
    gsm: between(60, 300),
    width: between(1, 2),
    length: between(0.5, 5000),
    part: fc.option(between(0, 1), { nil: undefined }),
    route: fc.constantFrom("reactive", "pigment-calender", "disperse"),
    kind: fc.constantFrom("production", "reprint", "overhead"),
    ink: open(0.01, 50),
    coverage: open(0.01, 1),
    pickup: open(0.4, 1.2),
    fixTemp: open(90, 210),
    dwell: open(10, 900),
    liquorRatio: open(1, 60),
    baths: fc.option(fc.integer({ min: 1, max: 8 }), { nil: undefined }),
    speed: open(2, 60),
    fastness: fc.record({ rubDry: halfGrade, rubWet: halfGrade, wash: halfGrade }),
    of: fc.nat(20),
  })
  .map(({ part, of, ...logged }) =>
    lotOf({
      ...logged,
      rejected: part === undefined ? undefined : part * logged.length,
      reprintOf: logged.kind === "reprint" ? `L-${of}` : "",
    }),
  );

/** Logs of up to forty lots with different names. */
export const anyLots: fc.Arbitrary<readonly Lot[]> = fc
  .array(anyLot, { minLength: 1, maxLength: 40 })
  .map((lots) => lots.map((lot, i) => ({ ...lot, lot: `L-${i}` })));

/**
 * A saved ledger in one order: groups by key, the rest by name.
 *
 * @param ledger - the ledger
 * @returns its data; equal ledgers give equal data
 */
export function canonical(ledger: Ledger): object {
  const saved: SavedLedger = ledger.save();
  const width = saved.sums.whole.length / saved.keys.length;
  const groups = saved.keys.map((key, i) => ({
    key,
    whole: saved.sums.whole.slice(i * width, (i + 1) * width),
    fraction: saved.sums.fraction.slice(i * width, (i + 1) * width),
  }));
  const sorted = <T>(list: readonly T[], name: (one: T) => string): T[] =>
    list.toSorted((a, b) => (name(a) < name(b) ? -1 : 1));
  return {
    format: saved.format,
    amounts: saved.amounts,
    groups: sorted(groups, ({ key }) => key),
    rejects: saved.rejects.areas
      .map((area, i) => [saved.rejects.lots[2 * i], saved.rejects.lots[2 * i + 1], area].join())
      .toSorted(),
    reprints: sorted(saved.reprints, ({ lot }) => lot),
    fastness: saved.fastness,
    sample: saved.sample,
    files: saved.files.toSorted(),
  };
}
