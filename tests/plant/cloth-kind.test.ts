import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { blendOf, blendText, clothKind } from "../../src/plant/cloth-kind.js";
import { valueOf } from "../steps/context.js";

const THIRDS = ["cotton", "viscose", "flax"].map((fibre) => ({ fibre, share: 1 / 3 }));
const BLEND = [
  { fibre: "cotton", share: 0.6 },
  { fibre: "polyester", share: 0.4 },
];

describe("blendText and blendOf", () => {
  it("write and read blends", () => {
    expect(blendText([{ fibre: "silk", share: 1 }])).toBe("silk");
    expect(blendOf("silk")).toEqual([{ fibre: "silk", share: 1 }]);
    expect(blendText(BLEND)).toBe("cotton 60 polyester 40");
    expect(blendOf("cotton 60 polyester 40")).toEqual(BLEND);
    expect(
      blendText([
        { fibre: "cotton", share: 0.965 },
        { fibre: "elastane", share: 0.035 },
      ]),
    ).toBe("cotton 96.5 elastane 3.5");
  });

  it("lose no cloth to rounding", () => {
    const sum = blendOf(blendText(THIRDS)).reduce((total, { share }) => total + share, 0);
    expect(sum).toBeCloseTo(1, 12);
  });
});

const FACTS: Readonly<Record<string, number>> = {
  "fibre.cotton.regain": 0.08,
  "fibre.cotton.heat-capacity": 1.3,
  "fibre.cotton.wetting-heat": 46,
  "fibre.cotton.sorption-heat": 1250,
  "fibre.polyester.regain": 0.004,
  "fibre.polyester.heat-capacity": 1.1,
  "fibre.polyester.wetting-heat": 5,
  "fibre.polyester.sorption-heat": 900,
};

describe("clothKind", () => {
  const kindOf = (blend: typeof BLEND) =>
    clothKind(blend, ({ id }) => constant(id, FACTS[id] ?? NaN));

  it("is the fibre for one fibre", () => {
    const cotton = kindOf([{ fibre: "cotton", share: 1 }]);
    expect(valueOf(cotton.dryShare)).toBeCloseTo(1 / 1.08, 12);
    expect(valueOf(cotton.regain)).toBeCloseTo(0.08, 12);
    expect(valueOf(cotton.heatCapacity)).toBeCloseTo(1.3 / 1.08, 12);
    expect(valueOf(cotton.wettingHeat)).toBeCloseTo(46, 12);
    expect(valueOf(cotton.sorptionHeat)).toBeCloseTo(1250, 9);
  });

  it("weighs a blend by bone-dry mass", () => {
    // 0.6/1.08 = 0.555556 and 0.4/1.004 = 0.398406 kg bone dry in one kg.
    const blend = kindOf(BLEND);
    expect(valueOf(blend.dryShare)).toBeCloseTo(0.953962, 6);
    expect(valueOf(blend.regain)).toBeCloseTo(0.04826, 5);
    expect(valueOf(blend.heatCapacity)).toBeCloseTo(1.160469, 6);
    expect(valueOf(blend.wettingHeat)).toBeCloseTo(28.877, 3);
    expect(valueOf(blend.sorptionHeat)).toBeCloseTo(1103.83, 2);
  });
});
