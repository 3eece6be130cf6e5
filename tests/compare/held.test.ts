import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { leafRange } from "../../src/account/draws.js";
import { swingsOf } from "../../src/account/swings.js";
import { benchOf, drawnColumns, medianColumns } from "../../src/compare/held.js";
import { InputError } from "../../src/problems/input-error.js";
import { derive } from "../../src/numbers/quantity.js";
import { inputOf } from "../report/compose/small-mill.js";
import { programOf, setting } from "./made-program.js";

const { account } = inputOf();
const { program } = account;
const IDS = ["water", "energy", "co2-location"] as const;

describe("benchOf", () => {
  it("gives what the swings give at both ends of a factor", () => {
    const swings = swingsOf(program, ["energy"]).get("energy")?.factors ?? [];
    const leaves = program.nodes.leaves();
    const bench = benchOf(program, IDS, medianColumns(program));
    let seen = 0;
    for (const { factor, low } of swings.slice(0, 12)) {
      const members = leaves.filter(({ leaf }) => (leaf.common ?? leaf.id) === factor);
      const holding = bench.hold(
        members.map(({ at }) => at),
        ["energy"],
      );
      const lows = members.map(({ leaf }) => leafRange(leaf).low);
      expect(holding?.(lows)[0]?.[0]).toBeCloseTo(low.saving, 9);
      seen += 1;
    }
    expect(seen).toBeGreaterThan(0);
  });

  it("gives on draws what an account of the mill gives with that setting held", () => {
    const chosen = program.nodes
      .leaves()
      .find(({ leaf }) => leaf.factor.startsWith("wash-range.") && leaf.spread.shape !== "fixed");
    if (chosen === undefined) throw new Error("no wash");
    const value = 1.1 * ("value" in chosen.leaf.spread ? chosen.leaf.spread.value : NaN);
    const bench = benchOf(program, IDS, drawnColumns(program, IDS, 300, 4));
    const nodes = program.nodes.with((leaf) =>
      leaf.id === chosen.leaf.id ? { ...leaf, spread: { shape: "fixed", value } } : leaf,
    );
    const held = accountOf({ ...program, nodes }, 300, 4).indicators;
    const asked = IDS.filter((id) => bench.hold([chosen.at], [id]) !== undefined);
    expect(asked.length).toBeGreaterThan(0);
    const found = bench.hold([chosen.at], asked)?.([value]) ?? [];
    asked.forEach((id, k) => {
      const [p, d] = [held.pigment.get(id), held.dye.get(id)];
      found[k]?.forEach((saving, i) => {
        expect(saving).toBeCloseTo(1 - (p?.[i] ?? NaN) / (d?.[i] ?? NaN), 9);
      });
    });
  });

  it("says when nothing hangs on a leaf", () => {
    const idle = setting("idle", { shape: "fixed", value: 1 });
    const first = derive(
      "p",
      "kWh/m2",
      "the first",
      [setting("a", idle.spread), idle],
      (a = 0) => a,
    );
    const made = programOf(first, setting("b", { shape: "fixed", value: 2 }));
    const water = benchOf(made, ["water", "energy"], medianColumns(made));
    expect(water.hold([0, 1], ["water"])).toBeUndefined();
  });

  it("gives no number where physics refuses, and where the dye route takes nothing", () => {
    const a = setting("a", { shape: "fixed", value: 1 });
    const b = setting("b", { shape: "fixed", value: 2 });
    const strict = derive("strict", "kWh/m2", "a up to 3", [a], (value = 0) => {
      if (value > 3) throw new InputError("a", value, "expected 3 at most");
      return value;
    });
    const made = programOf(strict, b);
    const bench = benchOf(made, ["energy"], medianColumns(made));
    const place = (leaf: object) => made.nodes.leaves().find((one) => one.leaf === leaf)?.at ?? -1;
    const ofA = bench.hold([place(a)], ["energy"]);
    expect(ofA?.([1])[0]?.[0]).toBe(0.5);
    expect(ofA?.([4])[0]?.[0]).toBeNaN();
    expect(ofA?.([2])[0]?.[0]).toBe(0);
    expect(bench.hold([place(b)], ["energy"])?.([0])[0]?.[0]).toBeNaN();
  });

  it("lets other faults through", () => {
    const broken = derive(
      "broken",
      "kWh/m2",
      "broken",
      [setting("a", { shape: "fixed", value: 1 })],
      (x = 0) => {
        if (x === 7) throw new TypeError("broken");
        return x;
      },
    );
    const made = programOf(broken, setting("b", { shape: "fixed", value: 2 }));
    const at = made.nodes.leaves().find(({ leaf }) => leaf.id === "a")?.at ?? -1;
    const holding = benchOf(made, ["energy"], medianColumns(made)).hold([at], ["energy"]);
    expect(() => holding?.([7])).toThrow(TypeError);
  });
});
