import { describe, expect, it } from "vitest";
import { type Account, accountOf, type Side } from "../../src/account/account.js";
import { writeProgram } from "../../src/account/program.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { SUBSTANCES } from "../../src/steps/flows.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { type MillFile, PLAIN_LOT, plantFrom } from "./exact-mill.js";
import { MANY_LOTS, MANY_ROUTES } from "./many-routes.js";

const DRAWS = 8;

function programFor(file: MillFile, lots: readonly Lot[]) {
  const plant = plantFrom(file);
  const ledger = new Ledger();
  lots.forEach((lot) => {
    ledger.add(lot, plant);
  });
  return writeProgram(plant, SHIPPED, ledger.settled().groups, "2026-11-25");
}

function drawsOf(account: Account, side: Side, flow: string): readonly number[] {
  return [...(account.fence[side].get(flow) ?? new Float64Array(DRAWS))];
}

function sumOf(account: Account, side: Side, flows: readonly string[]): readonly number[] {
  const parts = flows.map((flow) => drawsOf(account, side, flow));
  return Array.from({ length: DRAWS }, (_, i) =>
    parts.reduce((sum, draws) => sum + (draws[i] ?? NaN), 0),
  );
}

function expectEqual(left: readonly number[], right: readonly number[]): void {
  left.forEach((value, i) => {
    expect(value / (right[i] ?? NaN)).toBeCloseTo(1, 9);
  });
}

const SIDES: readonly Side[] = ["pigment", "dye", "actual"];

// `store` is the last step of every route, so cloth takes out the water it brought in.
const IN = ["water.withdrawn", "water.in-ink", "water.from-air", "water.steam-bought"] as const;
const OUT = ["water.evaporated", "water.discharged", "water.wasted"] as const;

const main = MANY_ROUTES.sites.main;
const BOUGHT: MillFile = {
  ...MANY_ROUTES,
  sites: {
    main: { ...main, boiler: { fuel: "bought" }, steam_intensity: { value: 0.07, exact: true } },
  },
};

describe.each([
  ["raised on site", MANY_ROUTES],
  ["bought", BOUGHT],
])("lots of every route, steam %s", (_, file) => {
  const account = accountOf(programFor(file, MANY_LOTS), DRAWS, 7);

  it.each(SIDES)("let water out as it came in, in every draw of the %s side", (side) => {
    expectEqual(sumOf(account, side, IN), sumOf(account, side, OUT));
  });

  it.each(SIDES)("lose no substance on the %s side", (side) => {
    const found = SUBSTANCES.filter((substance) =>
      drawsOf(account, side, `used.${substance}`).some((used) => used > 0),
    );
    expect(found.length).toBeGreaterThan(5);
    for (const substance of found) {
      const ends = ["cloth", "water", "air", "waste"].map((end) => `to-${end}.${substance}`);
      expectEqual(sumOf(account, side, ends), drawsOf(account, side, `used.${substance}`));
    }
  });

  it.each(SIDES)("take electricity and heat for all their energy on the %s side", (side) => {
    const of = (id: "energy" | "electricity" | "heat"): readonly number[] => [
      ...(account.indicators[side].get(id) ?? []),
    ];
    const [electricity, heat] = [of("electricity"), of("heat")];
    expectEqual(
      of("energy"),
      electricity.map((value, i) => value + (heat[i] ?? NaN)),
    );
  });

  it("are each on exactly one arm what the mill did", () => {
    const only = MANY_LOTS.filter(({ route }) => route === "reactive");
    const alone = accountOf(programFor(file, only), DRAWS, 7);
    expect(alone.fence.actual).toEqual(alone.fence.dye);
  });
});

describe("a program", () => {
  const program = programFor(MANY_ROUTES, MANY_LOTS);

  it("leaves lots without counterpart out", () => {
    const acrylic: Lot = { ...PLAIN_LOT, fibre: [{ fibre: "acrylic", share: 1 }] };
    const lonely = programFor(MANY_ROUTES, [acrylic]);
    expect(lonely.classes).toEqual([]);
    expect(lonely.terms).toEqual([]);
  });

  it("asks both arms for the same draws where they share a machine and a job", () => {
    const reactive = program.classes.findIndex(({ key }) => key.route === "reactive");
    const rates = (arm: "pigment" | "dye"): readonly number[] =>
      program.terms
        .filter(
          (term) =>
            term.lotClass === reactive &&
            term.arm === arm &&
            term.flow === "electricity" &&
            ["pretreat", "pretreat-dry", "print"].includes(term.role),
        )
        .map(({ rate }) => rate);
    expect(rates("pigment").length).toBeGreaterThan(4);
    expect(rates("dye")).toEqual(rates("pigment"));
  });

  it("knows the class of a group again", () => {
    program.classes.forEach(({ key }, i) => {
      expect(program.classOf(key)).toBe(i);
      expect(program.classOf({ ...key, client: "another" })).toBe(i);
      expect(program.classOf({ ...key, pigment: "", dye: "" })).toBeUndefined();
    });
  });
});

/** What changes, in all the ways a change may: numbers, a choice, a finish, prices. */
const OTHERWISE = {
  site: { "hall.temperature": 29, "boiler.efficiency": { value: 0.9, low: 0.88, high: 0.92 } },
  pad: { power: 9, pickup: { value: 0.6, exact: true } },
  calender: { heat: "electric" },
  reactive: { "wash.fresh-water": { value: 30, low: 25, high: 36 } },
  prices: { date: "2026-03-20", electricity: 0.2 },
} as const;

const PRICES = { currency: "EUR", date: "2026-01-01", electricity: 0.1, water: 1.2 } as const;

const PRICED: MillFile = {
  ...MANY_ROUTES,
  sites: { main: { ...main, tariffs: PRICES } },
};

function part(whole: unknown, key: string): Readonly<Record<string, unknown>> {
  return ((whole as Readonly<Record<string, unknown>>)[key] ?? {}) as Record<string, unknown>;
}

/** The file as it would be written with the change in it. */
function writtenOut(): MillFile {
  const machines = part(main, "machines");
  const soft = { ...part(PRICED.routes, "disperse"), finish: "soft" };
  const finish = { finish: "pad", "finish-dry": "gas stenter" };
  return {
    ...PRICED,
    sites: {
      main: {
        ...PRICED.sites.main,
        settings: { ...part(main, "settings"), ...OTHERWISE.site },
        tariffs: { ...PRICES, ...OTHERWISE.prices },
        machines: {
          ...machines,
          pad: { kind: "pad", settings: OTHERWISE.pad },
          calender: { kind: "calender", choices: OTHERWISE.calender },
        },
      },
    },
    routes: {
      ...PRICED.routes,
      reactive: { ...part(PRICED.routes, "reactive"), settings: OTHERWISE.reactive },
      disperse: { ...soft, machines: { ...part(soft, "machines"), ...finish } },
    },
  };
}

/** The same said as a change from a day on. */
function changedFrom(from: string): MillFile {
  return {
    ...PRICED,
    changes: [
      {
        from,
        note: "spring works",
        sites: {
          main: {
            settings: OTHERWISE.site,
            tariffs: OTHERWISE.prices,
            machines: {
              pad: { settings: OTHERWISE.pad },
              calender: { choices: OTHERWISE.calender },
            },
          },
        },
        routes: {
          reactive: { settings: OTHERWISE.reactive },
          disperse: { finish: "soft", machines: { finish: "pad", "finish-dry": "gas stenter" } },
        },
      },
    ],
  };
}

describe("a change of the plant file", () => {
  const early = MANY_LOTS.map((lot) => ({ ...lot, date: "2026-03-19" }));
  const late = MANY_LOTS.map((lot) => ({
    ...lot,
    lot: `${lot.lot} late`,
    date: "2026-03-20",
    length: lot.length * 1.5,
  }));
  const figures = (file: MillFile, lots: readonly Lot[]) => {
    const { indicators, fence } = accountOf(programFor(file, lots), DRAWS, 7);
    return { indicators, fence };
  };
  const both = figures(changedFrom("2026-03-20"), [...early, ...late]);

  it("before every lot is the file written that way, to the last bit", () => {
    expect(figures(changedFrom("2026-01-01"), early)).toEqual(figures(writtenOut(), early));
  });

  it("after every lot changes nothing", () => {
    expect(figures(changedFrom("2026-03-20"), early)).toEqual(figures(PRICED, early));
  });

  it("counts on its first day, and gives the sum of what lies before and after", () => {
    const [before, after] = [figures(PRICED, early), figures(writtenOut(), late)];
    for (const side of SIDES) {
      expect([...both.indicators[side].keys()]).toContain("cost");
      for (const [id, draws] of both.indicators[side]) {
        const halves = [before, after].map(({ indicators }) => indicators[side].get(id) ?? []);
        draws.forEach((value, i) => {
          const sum = (halves[0]?.[i] ?? NaN) + (halves[1]?.[i] ?? NaN);
          expect(Math.abs(value - sum)).toBeLessThanOrEqual(1e-12 * Math.abs(sum));
        });
      }
    }
  });

  it("moves every indicator that it should, so that the sums above say something", () => {
    const without = figures(PRICED, [...early, ...late]);
    for (const id of ["water", "energy", "cost", "co2-location"] as const) {
      expect(both.indicators.dye.get(id)).not.toEqual(without.indicators.dye.get(id));
    }
  });

  it("does not hang on the order of the rows", () => {
    const lots = [...late, ...early].reverse();
    expect(figures(changedFrom("2026-03-20"), lots)).toEqual(both);
  });

  it("keeps the stream of a number, so that both its values are drawn alike", () => {
    const program = programFor(changedFrom("2026-03-20"), [...early, ...late]);
    const leaves = program.nodes.leaves();
    const power = leaves.filter(({ leaf }) => leaf.id === "pad.power @ machine main/pad");
    expect(power.map(({ leaf }) => leaf.provenance)).toEqual(["default", "plant"]);
    expect(power[1]?.leaf.source).toBe(
      "plant.yaml, changes from 2026-03-20, sites.main.machines.pad.settings.power",
    );
    const { draws } = accountOf(program, DRAWS, 7);
    const [cheap, dear] = leaves
      .filter(({ leaf }) => leaf.factor === "tariffs.electricity")
      .map(({ at }) => draws.of(at));
    // A bare number has 5 % of doubt, whatever it is: 0.2 and 0.1 of one stream keep their ratio.
    dear?.forEach((value, i) => {
      expect(value / (cheap?.[i] ?? NaN)).toBeCloseTo(2, 12);
    });
  });
});
