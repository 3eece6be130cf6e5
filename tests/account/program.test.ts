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
    const found = SUBSTANCES.filter((substance) => account.fence[side].has(`used.${substance}`));
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
