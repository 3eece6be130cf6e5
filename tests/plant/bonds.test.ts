import { sampleCorrelation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { drawsOf } from "../../src/account/draws.js";
import { Nodes } from "../../src/account/nodes.js";
import { constant, type Leaf } from "../../src/numbers/quantity.js";
import { bondOf } from "../../src/plant/bonds.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";

const FIX = { site: "main", machine: "oven", role: "fix" };

function correlationOf(a: Leaf["bond"], b: Leaf["bond"], count = 20_000): number {
  const nodes = new Nodes();
  const places = [a, b].map((bond, i) => {
    const leaf: Leaf = {
      ...constant(`leaf ${i}`, 0),
      common: `default ${i}`,
      spread: { shape: "normal", value: 0, sd: 1, limits: [-10, 10] },
      ...(bond === undefined ? {} : { bond }),
    };
    return nodes.number(leaf);
  });
  const draws = drawsOf(nodes, count, 11);
  const [one = [], two = []] = places.map((at) => [...draws.of(at)]);
  return sampleCorrelation(one, two);
}

// Four standard errors of a correlation in 20,000 draws: 4 (1 − ρ²) / √20000.
const WITHIN = { half: (4 * 0.75) / Math.sqrt(20_000), none: 4 / Math.sqrt(20_000) };

describe("bondOf", () => {
  it.each([
    ["fix-temperature", "dwell", -0.5],
    ["temperature", "dwell", -0.5],
    ["exhaust-temperature", "exhaust-humidity", 0.5],
  ])("draws %s and %s of a step together", (first, second, correlation) => {
    const beside = (name: string): boolean => name === first || name === second;
    const drawn = correlationOf(bondOf(first, FIX, beside), bondOf(second, FIX, beside));
    expect(Math.abs(drawn - correlation)).toBeLessThan(WITHIN.half);
  });

  it("draws temperature and relative humidity of a hall together, and those of two halls apart", () => {
    const warm = bondOf("hall.temperature", { site: "main" });
    const damp = bondOf("hall.relative-humidity", { site: "main" });
    expect(Math.abs(correlationOf(warm, damp) + 0.5)).toBeLessThan(WITHIN.half);
    const other = bondOf("hall.relative-humidity", { site: "other" });
    expect(Math.abs(correlationOf(warm, other))).toBeLessThan(WITHIN.none);
  });

  it("gives a fixation to each role, and one exhaust to a machine", () => {
    const second = { ...FIX, role: "fix-again" };
    const stream = (setting: string, owner: typeof FIX): string | undefined =>
      bondOf(setting, owner, (name) => name !== "temperature")?.stream;
    expect(stream("dwell", FIX)).toBe(stream("fix-temperature", FIX));
    expect(stream("dwell", FIX)).not.toBe(stream("dwell", second));
    expect(stream("exhaust-temperature", FIX)).toBe(stream("exhaust-humidity", second));
    expect(stream("exhaust-temperature", FIX)).not.toBe(
      stream("exhaust-temperature", { ...FIX, machine: "stenter" }),
    );
  });

  it("leaves alone what has nothing beside it, and what no pair names", () => {
    expect(bondOf("dwell", FIX, (name) => name === "dwell")).toBeUndefined();
    expect(bondOf("power", FIX)).toBeUndefined();
    expect(bondOf("boiler.efficiency", { site: "main" })).toBeUndefined();
    expect(bondOf("dwell", { site: "main" })).toBeUndefined();
  });

  it("finds both settings of every pair in a kind of step", () => {
    const pairs = Object.values(STEP_KINDS).flatMap(({ kind, settings }) =>
      Object.keys(settings).flatMap((name) => {
        const bond = bondOf(name, FIX, (other) => other in settings);
        return bond === undefined ? [] : [`${kind}: ${bond.stream}`];
      }),
    );
    for (const one of new Set(pairs)) expect(pairs.filter((each) => each === one)).toHaveLength(2);
    expect(new Set(pairs.map((one) => one.replace(/^.*: | @.*$/g, "")))).toEqual(
      new Set(["dry fixation", "steaming", "exhaust"]),
    );
  });
});
