import { describe, expect, it } from "vitest";
import { type Account, accountOf, type Side } from "../../src/account/account.js";
import { writeProgram } from "../../src/account/program.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { residualIncomplete } from "../../src/physics/wash-balance.js";
import { washRange } from "../../src/steps/wash-range.js";
import { MANY_LOTS, MANY_ROUTES } from "../account/many-routes.js";
import { plantFrom } from "../account/exact-mill.js";
import { contextFor, flowsOf, LOT, storedCloth } from "../steps/context.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { expectNear } from "./near.js";

const PLANT = plantFrom(MANY_ROUTES);

function accountFor(lots: readonly Lot[]): Account {
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, PLANT);
  return accountOf(writeProgram(PLANT, SHIPPED, ledger.settled().groups, "2026-11-25"), 2, 1);
}

/** Water in and out at the fence, draw by draw. */
function crossing(
  account: Account,
  side: Side,
  draw: number,
): Record<"in" | "out" | "back", number> {
  const of = (...flows: readonly string[]): number =>
    flows.reduce((sum, flow) => sum + (account.fence[side].get(flow)?.[draw] ?? 0), 0);
  return {
    in: of("water.withdrawn", "water.in-ink", "water.from-air", "water.steam-bought"),
    out: of("water.discharged", "water.evaporated", "water.wasted"),
    back: of("water.discharged"),
  };
}

// Bare, logged and half-logged lots of every route, over all cloths in turn.
const LOTS = MANY_LOTS.filter((_, i) => i % 4 === 0);

describe("water of a site", () => {
  const alone = LOTS.map((lot) => accountFor([lot]));
  const together = accountFor(LOTS);
  const charged = alone.filter(({ program }) => program.classes.length > 0);

  // GRI 303: Water and Effluents 2018, disclosures 303-3 to 303-5: what is withdrawn is discharged or consumed;
  // ISO 14046:2014: what evaporates is consumed, and what cloth carries from stage to stage is counted once.
  // Nothing is stored: cloth leaves with the moisture it came with.
  it.each(["pigment", "dye", "actual"] as const)(
    "[D1] is discharged or consumed, lot by lot and in all: %s",
    (side) => {
      expect(charged.length).toBeGreaterThan(10);
      for (const account of [...charged, together]) {
        for (const draw of [0, 1]) {
          const { in: taken, out, back } = crossing(account, side, draw);
          expectNear(out, taken, 1e-9);
          expect(taken).toBeGreaterThan(back);
        }
      }
    },
  );

  it("[D2] of all lots is that of each lot, with no moisture counted twice", () => {
    for (const side of ["pigment", "dye"] as const) {
      for (const flow of ["water.withdrawn", "water.evaporated", "water.discharged"]) {
        const sum = alone.reduce(
          (total, account) => total + (account.fence[side].get(flow)?.[0] ?? 0),
          0,
        );
        expectNear(together.fence[side].get(flow)?.[0] ?? NaN, sum, 1e-9);
      }
    }
  });
});

describe("counter-current washing", () => {
  // Worked by hand for 5 kg of water per kg of carried liquor, four boxes: what cloth has lost the drain holds,
  // w (1 − c_n) = F b₁, with b₁ = 0.199744, 0.197304 and 0.188128 for exchanges of 1, 0.8 and 0.6.
  it.each([
    [1, 0.199744],
    [0.8, 0.197304],
    [0.6, 0.188128],
  ])("[W1] with an exchange of %d the drain holds %d", (exchange, drain) => {
    const lost = 1 - residualIncomplete(5, 1, 4, exchange, true);
    expect(Math.abs(lost / 5 - drain)).toBeLessThan(6e-7);
  });

  // US EPA, Profile of the textile industry, EPA/310-R-97-009, 1997 (from memory): one
  // feed through n boxes instead of a feed for each saves 50, 67, 75 and 80 % of the water, n = 2 to 5.
  it.each([
    [2, 50],
    [3, 66.7],
    [4, 75],
    [5, 80],
  ])(
    "[W1] through %d boxes instead of one bath each saves %d percent of the water",
    (boxes, percent) => {
      const context = contextFor(washRange, {
        takes: ["liquorRatio", "baths"],
        choices: { heating: "coil" },
      });
      const { terms } = washRange.build(context, storedCloth(context));
      const water = (baths: number | undefined): number =>
        flowsOf(terms, [{ ...LOT, liquorRatio: 4, baths }])("water.process");
      expect(Math.abs(100 * (1 - water(undefined) / water(boxes)) - percent)).toBeLessThan(0.05);
    },
  );
});
