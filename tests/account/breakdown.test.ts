import { describe, expect, it } from "vitest";
import { BROKEN_DOWN } from "../../src/account/account.js";
import { byGroup, byStep, dot, provenanceOf, waitingOf } from "../../src/account/breakdown.js";
import type { LedgerKey } from "../../src/ledger/key.js";
import { mean } from "../../src/numbers/quantiles.js";
import { amountPlaces } from "../../src/report/compose/answer.js";
import { inputOf, LOTS, lotOf, smallMill } from "../report/compose/small-mill.js";
import { EXACT_MILL, PLAIN_LOT, plantFrom } from "./exact-mill.js";

const input = inputOf();
const { account, groups } = input;
const ACCEPTED = amountPlaces().accepted;
const ARMS = ["pigment", "dye"] as const;

const total = (id: (typeof BROKEN_DOWN)[number], side: (typeof ARMS)[number] | "actual"): number =>
  mean(account.indicators[side].get(id) ?? new Float64Array(0));

describe("byStep", () => {
  it.each(BROKEN_DOWN)("adds up to the mean of %s", (id) => {
    for (const arm of ARMS) {
      const sum = byStep(account, id).reduce((so, step) => so + step[arm], 0);
      expect(total(id, arm)).not.toBe(0);
      expect(sum / total(id, arm)).toBeCloseTo(1, 12);
    }
  });

  it("names each step once, in the order in which cloth takes it on either route", () => {
    const roles = byStep(account, "energy").map(({ role }) => role);
    expect(new Set(roles).size).toBe(roles.length);
    for (const order of [
      ["pretreat", "pretreat-dry", "print", "fix", "store"],
      ["print", "steam", "wash", "squeeze", "dry", "store"],
    ])
      expect(roles.filter((role) => order.includes(role))).toEqual(order);
  });

  it("gives washing and steaming to dye, fixing to pigment", () => {
    const steps = new Map(byStep(account, "energy").map((step) => [step.role, step]));
    for (const role of ["steam", "wash"]) {
      expect(steps.get(role)?.pigment).toBe(0);
      expect(steps.get(role)?.dye).toBeGreaterThan(0);
    }
    expect(steps.get("fix")?.dye).toBe(0);
    expect(steps.get("fix")?.pigment).toBeGreaterThan(0);
  });
});

describe("waitingOf", () => {
  // By hand: standby of the printer at 2 kW over a quarter hour; a tenth of the stenter's hours at half of 40 kW; a
  // tenth of the calender's at 4 kW, and 15 kW of oil heat then, pumped at 0.005 kWh/MJ.
  it("is standby and hot waiting alone", () => {
    const exact = inputOf(plantFrom(EXACT_MILL), [PLAIN_LOT], { draws: 3 });
    const { length } = PLAIN_LOT;
    const drying = 0.05 + length / (60 * 25);
    const fixing = 0.1 + (length * 30) / (3600 * 2.5);
    expect(waitingOf(exact.account, "electricity").pigment).toBeCloseTo(
      2 * 0.25 + 0.1 * drying * 20 + 0.1 * fixing * (4 + 15 * 3.6 * 0.005),
      9,
    );
  });

  it("is part of the whole", () => {
    for (const arm of ARMS) {
      const waiting = waitingOf(account, "energy")[arm];
      expect(waiting).toBeGreaterThan(0);
      expect(waiting).toBeLessThan(0.2 * total("energy", arm));
    }
    expect(waitingOf(account, "cod")).toEqual({ pigment: 0, dye: 0 });
  });
});

describe("byGroup", () => {
  const PROPERTIES: readonly (readonly [string, (key: LedgerKey) => string])[] = [
    ["month", (key) => key.month],
    ["client", (key) => key.client],
    ["fabric", (key) => key.fabric],
    ["route", (key) => key.route],
  ];

  it.each(PROPERTIES)("by %s adds up to the totals", (_, by) => {
    for (const id of BROKEN_DOWN) {
      const parts = [...byGroup(account, groups, id, by, ACCEPTED).values()];
      expect(parts.length).toBeGreaterThan(1);
      for (const arm of ARMS) {
        const sum = parts.reduce((so, part) => so + part[arm], 0);
        expect(sum / total(id, arm)).toBeCloseTo(1, 12);
      }
      const actual = parts.reduce((so, part) => so + part.actual.pigment + part.actual.dye, 0);
      expect(actual / total(id, "actual")).toBeCloseTo(1, 12);
      expect(parts.reduce((so, { lots }) => so + lots, 0)).toBe(LOTS.length);
      const area = parts.reduce((so, { accepted }) => so + accepted, 0);
      expect(area).toBeCloseTo(input.reference.units, 6);
    }
  });

  it("counts what was done on the route that was taken", () => {
    const parts = byGroup(account, groups, "water", (key) => key.route, ACCEPTED);
    const pigment = parts.get("pigment-calender");
    expect(pigment?.actual).toEqual({ pigment: pigment?.pigment, dye: 0 });
    expect(pigment?.actualLots).toEqual({ pigment: 3, dye: 0 });
    const dye = parts.get("reactive");
    expect(dye?.actual).toEqual({ pigment: 0, dye: dye?.dye });
    expect(dye?.actualArea).toEqual({ pigment: 0, dye: dye?.accepted });
  });
});

describe("provenanceOf", () => {
  it.each(BROKEN_DOWN)("has shares of %s that add up to 1", (id) => {
    for (const arm of ARMS) {
      const { measured, allocated, modelled, default: rest } = provenanceOf(account, id, arm);
      for (const share of [measured, allocated, modelled, rest]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      expect(measured + allocated + modelled + rest).toBeCloseTo(1, 12);
    }
  });

  it("knows a mill that gave every setting from one that gave hardly any", () => {
    const exact = inputOf(plantFrom(EXACT_MILL), [PLAIN_LOT], { draws: 3 });
    expect(provenanceOf(exact.account, "water", "dye").modelled).toBeGreaterThan(0.95);
    expect(provenanceOf(account, "water", "dye").modelled).toBeLessThan(0.5);
  });

  it("rises with what the mill gives", () => {
    const given = inputOf(smallMill({ settings: { "wash-range.fresh-water": 22 } }), [
      lotOf({ route: "reactive" }),
    ]);
    const bare = inputOf(smallMill(), [lotOf({ route: "reactive" })]);
    expect(provenanceOf(given.account, "water", "dye").modelled).toBeGreaterThan(
      provenanceOf(bare.account, "water", "dye").modelled + 0.3,
    );
  });
});

describe("dot", () => {
  it("is the sum of products, over as many as there are amounts", () => {
    expect(dot([2, 3, 5], [7, 11])).toBe(47);
    expect(dot([2], [7, 11])).toBe(14);
  });
});
