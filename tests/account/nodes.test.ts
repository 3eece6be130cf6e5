import { describe, expect, it } from "vitest";
import { indicatorsOf } from "../../src/account/indicators.js";
import { Nodes } from "../../src/account/nodes.js";
import { medianOf } from "../../src/numbers/distributions.js";
import {
  constant,
  derive,
  evaluate,
  type Leaf,
  type Quantity,
} from "../../src/numbers/quantity.js";
import { assembleArm } from "../../src/plant/assemble.js";
import { clothKind } from "../../src/plant/cloth-kind.js";
import { lookupIn } from "../../src/plant/quantities.js";
import { buildSite } from "../../src/plant/site.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { plantFrom } from "./exact-mill.js";
import { CLOTHS, MANY_ROUTES } from "./many-routes.js";

const three = constant("three", 3);
const four = constant("four", 4);
const times = (factor: number, words: string): Quantity =>
  derive("scaled", "1", words, [three], (x = 0) => factor * x);

describe("Nodes", () => {
  it("numbers arguments before what reads them, and each quantity once", () => {
    const nodes = new Nodes();
    const sum = derive("sum", "1", "a + b", [three, four], (a = 0, b = 0) => a + b);
    expect(nodes.number(sum)).toBe(2);
    expect(nodes.number(sum)).toBe(2);
    expect(nodes.list.map(({ reads }) => reads)).toEqual([[], [], [0, 1]]);
    expect(nodes.leaves().map(({ leaf }) => leaf.id)).toEqual(["three", "four"]);
  });

  it("finds what rests on a node at any distance, also on what was added later", () => {
    const nodes = new Nodes();
    const twice = times(2, "2 × three");
    const sum = derive("sum", "1", "a + b", [twice, four], (a = 0, b = 0) => a + b);
    const [atSum, atThree, atFour] = [sum, three, four].map((one) => nodes.number(one));
    const atTwice = nodes.number(twice);
    expect(nodes.restingOn([atThree!])).toEqual([atTwice, atSum]);
    expect(nodes.restingOn([atFour!])).toEqual([atSum]);
    expect(nodes.restingOn([atSum!])).toEqual([]);
    const late = nodes.number(derive("late", "1", "a²", [four], (a = 0) => a * a));
    expect(nodes.restingOn([atFour!])).toEqual([atSum, late]);
  });

  it("takes formulas for one only when they say the same of the same", () => {
    const nodes = new Nodes();
    const first = nodes.number(times(2, "2 × three"));
    expect(nodes.number(times(2, "2 × three"))).toBe(first);
    expect(nodes.number(times(5, "5 × three"))).not.toBe(first);
  });

  it("keeps vintages of one stream apart", () => {
    const nodes = new Nodes();
    const older: Leaf = constant("grid", 0.4);
    expect(nodes.number(older)).not.toBe(nodes.number(constant("grid", 0.3)));
  });

  it("works out what formulas say", () => {
    const nodes = new Nodes();
    nodes.number(times(2, "2 × three"));
    expect([...nodes.evaluate(() => 7)]).toEqual([7, 14]);
  });
});

describe("every formula of a house with all steps", () => {
  const plant = plantFrom(MANY_ROUTES);
  const written = plant.sites["main"];
  if (written === undefined) throw new Error("the house has no site");
  const lookup = lookupIn(SHIPPED, "2026-03", "2026-11-25");
  const site = buildSite("main", written, lookup);
  const routes = Object.values(plant.routes);
  const rates = CLOTHS.flatMap((blend) =>
    routes.flatMap((route) =>
      [true, false].flatMap((own) =>
        assembleArm(plant, site, lookup, SHIPPED, {
          route,
          other: undefined,
          own,
          kind: clothKind(blend, lookup),
        }).steps.flatMap(({ terms, role }) =>
          terms.map(({ rate }) => ({ where: `${route.name}.${role}`, rate })),
        ),
      ),
    ),
  );
  const conversions = [true, false].flatMap((washed) =>
    [...site.conversions(washed)].flatMap(([flow, list]) =>
      list.map(({ to, rate }) => ({ where: `${flow} → ${to}`, rate })),
    ),
  );
  const intensities = [...indicatorsOf(site, written, plant.gwp)].flatMap(([id, indicator]) =>
    [...indicator.intensities].map(([flow, rate]) => ({ where: `${id} of ${flow}`, rate })),
  );

  it("has the value it would have if no other had been taken for it", () => {
    const all = [...rates, ...conversions, ...intensities];
    expect(all.length).toBeGreaterThan(1000);
    const nodes = new Nodes();
    const places = all.map(({ rate }) => nodes.number(rate));
    const medians = new Map<string, number>();
    const median = (leaf: Leaf): number => {
      const key = JSON.stringify(leaf.spread);
      const known = medians.get(key) ?? medianOf(leaf.spread);
      medians.set(key, known);
      return known;
    };
    const interned = nodes.evaluate(median);
    const alone = new Map<Quantity, number>();
    const confused = all.filter(
      ({ rate }, i) => evaluate(rate, median, alone) !== interned[places[i] ?? -1],
    );
    expect([...new Set(confused.map(({ where, rate }) => `${where}: ${rate.id}`))]).toEqual([]);
  });

  it("gives numbers only", () => {
    const alone = new Map<Quantity, number>();
    const odd = [...rates, ...conversions, ...intensities].filter(
      ({ rate }) => !Number.isFinite(evaluate(rate, (leaf) => medianOf(leaf.spread), alone)),
    );
    expect(odd.map(({ where }) => where)).toEqual([]);
  });
});
