import { describe, expect, it } from "vitest";
import { drawsOf } from "../../src/account/draws.js";
import { breakEvensOf, farness, type Target } from "../../src/compare/break-even.js";
import { derive, type Quantity } from "../../src/numbers/quantity.js";
import { quantile } from "../../src/numbers/quantiles.js";
import { inputOf } from "../report/compose/small-mill.js";
import { factorsOf, programOf, setting } from "./made-program.js";

const NOTHING: Target = { id: "energy", quantile: 0.5, level: 0, today: 0.4 };
const fixed = (value: number) => ({ shape: "fixed", value }) as const;
const wide = (value: number) =>
  ({ shape: "triangular", low: value / 2, value, high: 2 * value }) as const;

function ask(
  pigment: Quantity,
  dye: Quantity,
  plausible: Readonly<Record<string, readonly [number, number]>>,
  target: Target = NOTHING,
  areas?: Float64Array,
) {
  const [answer] = breakEvensOf(
    {
      program: programOf(pigment, dye),
      factors: factorsOf(plausible),
      draws: 2000,
      seed: 1,
      refined: 5,
      ...(areas === undefined ? {} : { areas }),
    },
    [target],
  );
  if (answer === undefined) throw new Error("no answer");
  const of = (factor: string) => answer.found.find((found) => found.factor === factor);
  return { answer, of };
}

const a = setting("a", fixed(3));
const b = setting("b", fixed(5));

describe("breakEvensOf", () => {
  // S = 1 − a/b, worked by hand: nothing is saved where a = b, two fifths are saved at a = 3, b = 5.
  it("finds the zero of a saving that is linear in a factor", () => {
    const { answer, of } = ask(a, b, { a: [0, 20], b: [1, 20] });
    expect(of("a")?.roots[0]?.value).toBeCloseTo(5, 3);
    expect(of("a")?.course).toBe("falls");
    expect(of("b")?.roots[0]?.value).toBeCloseTo(3, 3);
    expect(of("b")?.course).toBe("rises");
    expect(answer.none).toEqual([]);
    // b would have to fall by 40 %, a to rise by 67 %.
    expect(answer.found.map(({ factor }) => factor)).toEqual(["b", "a"]);
  });

  it("finds where a saving falls below a level", () => {
    const { of } = ask(a, b, { a: [0, 20], b: [1, 20] }, { ...NOTHING, level: 0.2 });
    expect(of("a")?.roots[0]?.value).toBeCloseTo(4, 3);
    expect(of("b")?.roots[0]?.value).toBeCloseTo(3.75, 3);
  });

  it("counts factors without a break-even inside their range, and those that move nothing", () => {
    const idle = setting("idle", wide(1));
    const still = derive("pigment", "kWh/m2", "a alone", [a, idle], (first = 0) => first);
    const { answer } = ask(still, b, { a: [0, 4.9], b: [3.1, 20], idle: [0, 10] });
    expect(answer.found).toEqual([]);
    expect(answer.none).toHaveLength(2);
    expect(answer.idle).toBe(1);
  });

  it("finds several, and says that the saving bends", () => {
    // P = 10 − (x − 5)² and D = 6 are alike at 3 and at 7; today x = 2 saves five sixths.
    const x = setting("x", fixed(2));
    const bent = derive("bent", "kWh/m2", "10 − (x − 5)²", [x], (at = 0) => 10 - (at - 5) ** 2);
    const { of, answer } = ask(
      bent,
      setting("d", fixed(6)),
      { x: [0, 10], d: [5.9, 6.1] },
      {
        ...NOTHING,
        today: 5 / 6,
      },
    );
    expect(of("x")?.roots.map(({ value }) => Number(value.toFixed(2)))).toEqual([3, 7]);
    expect(of("x")?.course).toBe("bends");
    expect(answer.bends).toBe(1);
  });

  it("holds the factor in all draws, the doubt of all others kept", () => {
    // Held at a, S = 1 − a/b has the median 1 − a/m with m the median of b, so that nothing is saved at a = m.
    const doubtful = setting("b", wide(5));
    const { nodes } = programOf(a, doubtful);
    const place = nodes.leaves().find(({ leaf }) => leaf === doubtful)?.at ?? -1;
    const m = quantile(drawsOf(nodes, 2000, 1).of(place), 0.5);
    const target = { ...NOTHING, today: 1 - 3 / m };
    const { of } = ask(a, doubtful, { a: [0, 20], b: [1, 20] }, target);
    expect(of("a")?.roots[0]?.isDrawn).toBe(true);
    expect(of("a")?.roots[0]?.value).toBeCloseTo(m, 2);
    // The distribution leans to the right, so that its median is not its most likely value.
    expect(m).toBeGreaterThan(5.2);
  });

  it("turns owners of one default together, constants never", () => {
    const shared = { common: "a", provenance: "default" } as const;
    const both = [setting("a @ 1", fixed(1), shared), setting("a @ 2", fixed(1), shared)];
    const sum = derive("sum", "kWh/m2", "both", both, (one = 0, two = 0) => one + two);
    const constant = setting("b", fixed(5), { provenance: "constant" });
    const { answer, of } = ask(
      sum,
      constant,
      { "a @ 1": [0, 20], "a @ 2": [0, 20] },
      {
        ...NOTHING,
        today: 3 / 5,
      },
    );
    expect(answer.found).toHaveLength(1);
    expect(of("a")?.roots[0]?.value).toBeCloseTo(2.5, 3);
  });

  it("takes no pole for a zero, and no share where the dye route takes nothing", () => {
    // D = b − 2 passes through zero at b = 2, where S has a pole; S = 1 − 1/(b − 2) is zero at b = 3.
    const less = derive("less", "kWh/m2", "b − 2", [b], (value = 0) => value - 2);
    const { of } = ask(
      setting("a", fixed(1)),
      less,
      { a: [0.9, 1.1], b: [0, 20] },
      {
        ...NOTHING,
        today: 2 / 3,
      },
    );
    expect(of("b")?.roots).toHaveLength(1);
    expect(of("b")?.roots[0]?.value).toBeCloseTo(3, 2);
  });

  it("moves with the accepted areas of both arms", () => {
    // S = 1 − (a/b)(A_D/A_P): with 0.9 the saving is 46 % and nothing is saved at a = b/0.9.
    const areas = new Float64Array(2000).fill(0.9);
    const { of } = ask(a, b, { a: [0, 20], b: [1, 20] }, { ...NOTHING, today: 0.46 }, areas);
    expect(of("a")?.roots[0]?.value).toBeCloseTo(5 / 0.9, 3);
  });

  it("finds on a whole mill only values that lie in plausible ranges, the same for the same seed", () => {
    const { account, factors, comparisons } = inputOf();
    const target: Target = {
      ...NOTHING,
      today: comparisons.get("energy")?.saving?.median ?? NaN,
    };
    const search = { program: account.program, factors, draws: 500, seed: 1, refined: 2 };
    const answers = breakEvensOf(search, [target]);
    for (const { range, roots } of answers[0]?.found ?? []) {
      for (const { value } of roots) {
        expect(value).toBeGreaterThanOrEqual(range[0]);
        expect(value).toBeLessThanOrEqual(range[1]);
      }
    }
    expect((answers[0]?.found.length ?? 0) + (answers[0]?.none.length ?? 0)).toBeGreaterThan(20);
    expect(breakEvensOf(search, [target])).toEqual(answers);
  });
});

describe("farness", () => {
  it("is the part of itself by which a value changes", () => {
    expect(farness(3, 2)).toBe(0.5);
    expect(farness(1, 2)).toBe(0.5);
    expect(farness(0, 0)).toBe(0);
    expect(farness(1, 0)).toBe(Infinity);
  });
});
