import { describe, expect, it } from "vitest";
import {
  fillingHeat,
  type Group,
  hottestFeed,
  lastTemperature,
  type RangeLevels,
  SEQUENCES,
  washHeat,
} from "../../src/steps/wash-boxes.js";

const LEVELS: RangeLevels = { supply: 15, warm: 60, hot: 95, recovery: 0 };
const NOTHING = { temperature: 15, capacity: 0, carried: 0, liquor: 10 };

function perLitre(groups: readonly Group[], levels = LEVELS): number {
  return washHeat(groups, levels, NOTHING).reduce((sum, group) => sum + group.perLitre, 0);
}

function whole(groups: readonly Group[], liquor: number, entering = {}, levels = LEVELS): number {
  const cloth = { temperature: 15, capacity: 1.2, carried: 1.1, liquor, ...entering };
  return washHeat(groups, levels, cloth).reduce(
    (sum, group) => sum + liquor * group.perLitre + group.perMass,
    0,
  );
}

describe("heat of the liquor", () => {
  // Worked by hand: 10 L/kg from 15 to 95 °C take 10 × 4.19 × 80 = 3.352 MJ/kg.
  it("[W2] is 3.352 MJ/kg for 10 L/kg from 15 to 95 °C", () => {
    expect((10 * perLitre([["hot"]])) / 1000).toBeCloseTo(3.352, 2);
  });

  // Cubic metres of water of 15 °C after IAPWS-IF97, density at 15 °C counted: 52.215 and 92.959 kWh.
  it.each([
    [60, 52.215],
    [95, 92.959],
  ])("is, to %d °C, %d kWh per m³", (hot, expected) => {
    const kWh = (1000 * perLitre([["hot"]], { ...LEVELS, hot })) / 3600;
    expect(Math.abs(kWh / expected - 1)).toBeLessThan(0.003);
  });

  // By hand: of six equal baths two take 45 K and two 80 K; 250/6 K on average.
  it("is shared evenly by baths that are fed by themselves", () => {
    expect(perLitre(SEQUENCES.six)).toBeCloseTo((4.186 * 250) / 6, 9);
    expect(perLitre(SEQUENCES.five)).toBeCloseTo((4.186 * 170) / 5, 9);
    expect(perLitre(SEQUENCES.four)).toBeCloseTo((4.186 * 125) / 4, 9);
  });

  // By hand: the feed is warmed to 60 and to 95 °C once, and leaves with what it has left at 60 °C.
  it("is paid once where the water runs against the cloth", () => {
    expect(perLitre(SEQUENCES["counter-current"])).toBeCloseTo(4.186 * 80, 9);
  });

  it("is not given back by a box that would have to be cooled", () => {
    const [group] = washHeat([["warm", "hot"]], LEVELS, NOTHING);
    expect(group!.perLitre).toBeCloseTo(4.186 * 80, 9);
  });

  it("is spared by what the drain gives back, once per drain", () => {
    const back = { ...LEVELS, recovery: 0.5 };
    expect(perLitre([["hot"]], back)).toBeCloseTo(4.186 * 40, 9);
    // The drain of the range is at 60 °C: the feed comes in at 37.5 °C, and the last box stands at that.
    expect(perLitre(SEQUENCES["counter-current"], back)).toBeCloseTo(4.186 * 57.5, 9);
    expect(washHeat(SEQUENCES["counter-current"], back, NOTHING)[0]!.feed).toBe(37.5);
    expect(lastTemperature(SEQUENCES["counter-current"], back)).toBe(37.5);
  });
});

describe("heat of the cloth", () => {
  // By hand, 1.2 + 4.186 × 1.1 = 5.8046 kJ/(kg K): +45 K into the warm box, +35 K into the hot one, and from
  // hot to warm −35 K, which the warm box's liquor outweighs.
  it("follows the boxes up and down", () => {
    const parts = washHeat(SEQUENCES.six, LEVELS, {
      temperature: 15,
      capacity: 1.2,
      carried: 1.1,
      liquor: 25,
    });
    expect(parts.map(({ perMass }) => perMass / 5.8046)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(45, 9),
      expect.closeTo(35, 9),
      expect.closeTo(0, 9),
      expect.closeTo(-35, 9),
      0,
    ]);
  });

  it("warms no box that the cloth keeps warm enough", () => {
    const [group] = washHeat([["warm"]], LEVELS, {
      temperature: 100,
      capacity: 1.2,
      carried: 1.1,
      liquor: 1,
    });
    expect(group).toEqual({ feed: 15, perLitre: 0, perMass: 0 });
  });

  it("is never less than nothing in all", () => {
    for (const groups of Object.values(SEQUENCES)) {
      for (const temperature of [15, 60, 100]) {
        for (const liquor of [1, 5, 25, 100]) {
          expect(whole(groups, liquor, { temperature })).toBeGreaterThanOrEqual(0);
        }
      }
    }
  });
});

describe("wash range as a whole", () => {
  // All boxes heated: what cloth and water carry out above what they brought in is what was put in.
  it("closes its balance of energy", () => {
    const groups = [["warm", "hot"]] as const;
    const levels = { supply: 15, warm: 60, hot: 90, recovery: 0.2 };
    const cloth = { temperature: 20, capacity: 1.2, carried: 1.1, liquor: 1.5 };
    const [heat] = washHeat(groups, levels, cloth);
    const feed = 15 + 0.2 * 45;
    const drained = 4.186 * 1.5 * (60 - feed);
    const carried = (1.2 + 4.186 * 1.1) * (90 - 20);
    expect(1.5 * heat!.perLitre + heat!.perMass).toBeCloseTo(drained + carried, 9);
  });

  // EPA profile of the textile industry, 1997 (from memory): five steps of counter-current use 80 % less
  // water than fresh water in each. Heat follows the water of the boxes that are warmed.
  it("takes less heat in counter-current with a fifth of the water", () => {
    expect(whole(SEQUENCES["counter-current"], 5)).toBeLessThan(whole(SEQUENCES.five, 25));
  });

  it("costs no less with more liquor, where each box is fed by itself", () => {
    for (const groups of [SEQUENCES.six, SEQUENCES.five, SEQUENCES.four]) {
      for (let liquor = 1; liquor < 60; liquor++) {
        expect(whole(groups, liquor + 1)).toBeGreaterThanOrEqual(whole(groups, liquor));
      }
    }
  });

  it("leaves the cloth at the temperature of the last box", () => {
    expect(lastTemperature(SEQUENCES.six, LEVELS)).toBe(15);
    expect(lastTemperature([["hot"], ["warm"]], LEVELS)).toBe(60);
  });

  it("charges surface losses to the feed of the hottest box", () => {
    expect(hottestFeed(SEQUENCES.six, { ...LEVELS, recovery: 0.5 })).toBe(55);
    expect(hottestFeed([["warm"]], LEVELS)).toBe(15);
  });

  // By hand: of six boxes two are 45 K and two 80 K above the supply.
  it("warms a filling to the mean of the boxes", () => {
    expect(fillingHeat(SEQUENCES.six, LEVELS)).toBeCloseTo((4.186 * 250) / 6, 9);
    expect(fillingHeat(SEQUENCES["counter-current"], LEVELS)).toBeCloseTo((4.186 * 250) / 5, 9);
  });
});
