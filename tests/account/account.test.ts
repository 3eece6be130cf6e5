import { describe, expect, it } from "vitest";
import { type Account, accountOf, accountsOf } from "../../src/account/account.js";
import { Workshop } from "../../src/account/workshop.js";
import { writeProgram } from "../../src/account/program.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import {
  added,
  atFence,
  byCalender,
  byDye,
  byStenter,
  type Figures,
  type HandLot,
} from "./by-hand.js";
import { EXACT_MILL, PLAIN_LOT, plantFrom } from "./exact-mill.js";

const PLANT = plantFrom(EXACT_MILL);

const PIGMENT_LOT = PLAIN_LOT;

const DYE_LOT: Lot = {
  ...PLAIN_LOT,
  lot: "2",
  route: "reactive",
  gsm: 200,
  width: 1.5,
  length: 600,
  rejected: 20,
};

const BLEND_LOT: Lot = {
  ...PLAIN_LOT,
  lot: "3",
  route: "pigment-stenter",
  fibre: [
    { fibre: "cotton", share: 0.6 },
    { fibre: "polyester", share: 0.4 },
  ],
  gsm: 160,
  length: 800,
  ink: 9,
  pickup: 0.65,
  fixTemp: 155,
  dwell: 100,
};

function accountFor(...lots: readonly Lot[]): Account {
  const ledger = new Ledger();
  lots.forEach((lot) => {
    ledger.add(lot, PLANT);
  });
  return accountOf(writeProgram(PLANT, SHIPPED, ledger.settled().groups, "2026-11-25"), 3, 1);
}

/** The figures of one side; every draw must give the same. */
function figuresOf(account: Account, side: "pigment" | "dye" | "actual"): Figures {
  const one = (id: keyof Figures): number => {
    const draws = account.indicators[side].get(id);
    if (draws === undefined) throw new Error(`there is no ${id}`);
    expect([...draws]).toEqual([draws[0], draws[0], draws[0]]);
    return draws[0] ?? NaN;
  };
  return {
    water: one("water"),
    electricity: one("electricity"),
    heat: one("heat"),
    energy: one("energy"),
    cod: one("cod"),
  };
}

function figuresOfBoth(account: Account): { readonly pigment: Figures; readonly dye: Figures } {
  return { pigment: figuresOf(account, "pigment"), dye: figuresOf(account, "dye") };
}

function expectSame(found: Figures, wanted: Figures): void {
  for (const id of ["water", "electricity", "heat", "energy", "cod"] as const) {
    expect(found[id] / wanted[id], `${id}: ${found[id]}, by hand ${wanted[id]}`).toBeCloseTo(1, 9);
  }
}

const COTTON = { cotton: 1, polyester: 0 } as const;

// Printed area × coverage 0.5 × 0.02 L/m² where no ink is logged.
const FIRST: HandLot = { ...COTTON, length: 1000, width: 1.6, gsm: 140, pickup: 0.7, ink: 16 };
const SECOND: HandLot = { ...COTTON, length: 600, width: 1.5, gsm: 200, pickup: 0.7, ink: 9 };
const THIRD: HandLot = {
  cotton: 0.6,
  polyester: 0.4,
  length: 800,
  width: 1.6,
  gsm: 160,
  pickup: 0.65,
  ink: 9,
};

const BY_HAND = {
  first: { pigment: atFence(byCalender(FIRST)), dye: atFence(byDye(FIRST)) },
  second: { pigment: atFence(byCalender(SECOND)), dye: atFence(byDye(SECOND)) },
  // The pick-up logged crosses with the pad that both arms share; ink crosses times 0.9; temperature and
  // dwell belong to the stenter alone.
  third: {
    pigment: atFence(byStenter(THIRD, 155, 100)),
    dye: atFence(byDye({ ...THIRD, ink: 0.9 * 9 })),
  },
};

describe("three lots worked by hand", () => {
  it("agree with pen and paper where that is short", () => {
    const { pigment, dye } = figuresOfBoth(accountFor(PIGMENT_LOT));
    // Pad 0.9 × 0.7 × 224 + 0.9 × 20 + 20, belt 120 × 1600 / 200, flushing 5: 1144.12 L, of 0.95 withdrawn.
    expect(pigment.water).toBeCloseTo(1204.34, 2);
    // Pad 0.75 × 20 × (10.4 + 17), purged ink 0.15 × (72 + 168 + 362.5 + 25.5).
    expect(pigment.cod).toBeCloseTo(505.2, 6);
    // Cloth 156.8 × 9.6 + 16 × (27 + 275.5 + 8.5), detergent 224 × 11, pad 15 × 9.6, purged ink 0.15 × 388.5.
    expect(dye.cod).toBeCloseTo(9147.555, 6);
  });

  it("charges a pigment lot to both arms", () => {
    const account = accountFor(PIGMENT_LOT);
    expectSame(figuresOf(account, "pigment"), BY_HAND.first.pigment);
    expectSame(figuresOf(account, "dye"), BY_HAND.first.dye);
    expectSame(figuresOf(account, "actual"), BY_HAND.first.pigment);
  });

  it("charges a dye lot to both arms", () => {
    const account = accountFor(DYE_LOT);
    expectSame(figuresOf(account, "pigment"), BY_HAND.second.pigment);
    expectSame(figuresOf(account, "dye"), BY_HAND.second.dye);
    expectSame(figuresOf(account, "actual"), BY_HAND.second.dye);
  });

  it("charges a blend with half its settings logged to both arms", () => {
    const account = accountFor(BLEND_LOT);
    expectSame(figuresOf(account, "pigment"), BY_HAND.third.pigment);
    expectSame(figuresOf(account, "dye"), BY_HAND.third.dye);
    expectSame(figuresOf(account, "actual"), BY_HAND.third.pigment);
  });

  it("adds them up", () => {
    const account = accountFor(PIGMENT_LOT, DYE_LOT, BLEND_LOT);
    const { first, second, third } = BY_HAND;
    expectSame(
      figuresOf(account, "pigment"),
      added([first.pigment, second.pigment, third.pigment]),
    );
    expectSame(figuresOf(account, "dye"), added([first.dye, second.dye, third.dye]));
    expectSame(figuresOf(account, "actual"), added([first.pigment, second.dye, third.pigment]));
  });
});

describe("accounts in one pass", () => {
  const groupsOf = (...lots: readonly Lot[]) => {
    const ledger = new Ledger();
    for (const lot of lots) ledger.add(lot, PLANT);
    return ledger.settled().groups;
  };

  it("are the same to the last bit as each alone", () => {
    const workshop = new Workshop();
    const lots = [groupsOf(PIGMENT_LOT), groupsOf(DYE_LOT, BLEND_LOT)];
    const shared = lots.map((groups) =>
      writeProgram(PLANT, SHIPPED, groups, "2026-11-25", workshop),
    );
    const together = accountsOf(shared, 50, 3);
    lots.forEach((groups, i) => {
      const alone = accountOf(writeProgram(PLANT, SHIPPED, groups, "2026-11-25"), 50, 3);
      expect(together[i]?.indicators).toEqual(alone.indicators);
      expect(together[i]?.fence).toEqual(alone.fence);
    });
  });

  it("are refused where they do not share their quantities", () => {
    const write = () => writeProgram(PLANT, SHIPPED, groupsOf(DYE_LOT), "2026-11-25");
    expect(() => accountsOf([write(), write()], 10, 1)).toThrow("share their nodes");
    expect(accountsOf([], 10, 1)).toEqual([]);
  });
});
