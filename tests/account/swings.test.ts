import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { leafRange } from "../../src/account/draws.js";
import { writeProgram } from "../../src/account/program.js";
import { swingsOf } from "../../src/account/swings.js";
import type { MillChange } from "../report/compose/small-mill.js";
import { AS_OF, inputOf, smallMill } from "../report/compose/small-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { EXACT_MILL, exactly, PLAIN_LOT, plantFrom, SETTINGS } from "./exact-mill.js";

const input = inputOf();
const IDS = ["water", "energy", "co2-location"] as const;
const swings = swingsOf(input.account.program, IDS);

/** Share saved by a mill of which all is known. */
function exactSaving(settings: Readonly<Record<string, number>>): number {
  const { account } = inputOf(
    plantFrom({
      ...EXACT_MILL,
      sites: { main: { ...EXACT_MILL.sites.main, settings: exactly(settings) } },
    }),
    [PLAIN_LOT],
    { draws: 3 },
  );
  const of = (arm: "pigment" | "dye"): number => account.indicators[arm].get("water")?.[0] ?? NaN;
  return 1 - of("pigment") / of("dye");
}

describe("swingsOf", () => {
  it.each(IDS)("lists the widest swing of %s first", (id) => {
    const { factors } = swings.get(id) ?? { factors: [] };
    expect(factors.length).toBeGreaterThan(5);
    factors.forEach(({ width, low, high, factor }, at) => {
      expect(width, factor).toBeCloseTo(Math.abs(high.saving - low.saving), 12);
      expect(width).toBeGreaterThan(0);
      expect(low.value).toBeLessThan(high.value);
      if (at > 0) expect(width).toBeLessThanOrEqual(factors[at - 1]?.width ?? NaN);
    });
    expect(new Set(factors.map(({ factor }) => factor)).size).toBe(factors.length);
  });

  it("names the wash water for water", () => {
    const names =
      swings
        .get("water")
        ?.factors.slice(0, 3)
        .map(({ factor }) => factor) ?? [];
    expect(names.some((name) => name.startsWith("wash-range.fresh-water"))).toBe(true);
  });

  it("has as base the saving with every setting at its median", () => {
    const { groups, account } = input;
    const settings: Record<string, unknown> = {};
    // The same mill, told every default it uses without doubt.
    for (const { leaf } of account.program.nodes.leaves())
      if (leaf.provenance === "default" && leaf.id.includes(" @ "))
        settings[leaf.factor] = { value: leafRange(leaf).median, exact: true };
    expect(Object.keys(settings).length).toBeGreaterThan(30);
    const change: MillChange = { settings };
    const program = writeProgram(smallMill(change), SHIPPED, groups, AS_OF);
    const exact = accountOf(program, 3, 1);
    const of = (arm: "pigment" | "dye"): number => exact.indicators[arm].get("water")?.[0] ?? NaN;
    expect(swings.get("water")?.base).toBeCloseTo(1 - of("pigment") / of("dye"), 3);
  });

  it("moves one factor to its ends and leaves the rest", () => {
    const doubted = plantFrom({
      ...EXACT_MILL,
      sites: {
        main: {
          ...EXACT_MILL.sites.main,
          settings: {
            ...exactly(SETTINGS),
            "wash-range.fresh-water": { value: 25, low: 20, high: 30 },
          },
        },
      },
    });
    const { account } = inputOf(doubted, [PLAIN_LOT], { draws: 3 });
    const found = swingsOf(account.program, ["water"]).get("water");
    expect(found?.base).toBeCloseTo(exactSaving(SETTINGS), 6);
    const [first] = found?.factors ?? [];
    expect(first?.factor).toContain("wash-range.fresh-water");
    expect(first?.own).toBe(true);
    for (const end of ["low", "high"] as const)
      expect(first?.[end].saving).toBeCloseTo(
        exactSaving({ ...SETTINGS, "wash-range.fresh-water": first?.[end].value ?? NaN }),
        9,
      );
    // More washing, more saved.
    expect(first?.high.saving).toBeGreaterThan(first?.low.saving ?? NaN);
  });
});
