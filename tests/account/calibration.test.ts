import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import {
  calibrated,
  calibrationOf,
  carrierOf,
  isBoilerInput,
} from "../../src/account/calibration.js";
import { constant, derive, type Derived } from "../../src/numbers/quantity.js";
import { madeMill } from "../meters/made.js";

const times = (by: number): Derived =>
  derive("correction", "1", String(by), [constant("by", by)], (value = 1) => value);

describe("calibrated", () => {
  const { program } = madeMill({});
  const before = accountOf(program, 100, 1);

  it("multiplies one carrier of one machine and nothing else", () => {
    const other = calibrated(program, {
      of: (_, machine, carrier) =>
        machine === "printer" && carrier === "electricity"
          ? { factor: times(2), by: "measured" }
          : undefined,
      boiler: () => undefined,
    });
    const after = accountOf(other, 100, 1);
    const sum = (account: typeof before, machine: string): number =>
      (account.parts.get("electricity") ?? []).reduce(
        (all, { term, mean }) =>
          all + (term.machine === machine && carrierOf(term.flow) === "electricity" ? mean : 0),
        0,
      );
    expect(sum(after, "printer") / sum(before, "printer")).toBeCloseTo(2, 9);
    expect(sum(after, "stenter")).toBe(sum(before, "stenter"));
    expect(other.terms.filter(({ known }) => known === "measured").length).toBeGreaterThan(0);
  });

  it("multiplies what a boiler burns for its steam", () => {
    const after = accountOf(
      calibrated(program, { of: () => undefined, boiler: () => times(3) }),
      100,
      1,
    );
    const heat = (account: typeof before, role: string): number =>
      (account.parts.get("energy") ?? []).reduce(
        (all, { term, mean }) =>
          all + (term.role === role && carrierOf(term.flow) === "steam" ? mean : 0),
        0,
      );
    // The boiler's pumps stay, so it is a little less than three times.
    expect(heat(after, "wash") / heat(before, "wash")).toBeGreaterThan(2.9);
    expect(heat(after, "wash") / heat(before, "wash")).toBeLessThanOrEqual(3);
  });
});

describe("calibrationOf", () => {
  const { program } = madeMill({});
  const given = (draws: Float64Array, machine = "printer") =>
    calibrationOf([
      { site: "main", machine, carrier: "electricity", name: "correction", by: "measured", draws },
    ]);

  it("takes draws worked out elsewhere for those of the formula", () => {
    const byFormula = calibrated(program, {
      of: (_, machine, carrier) =>
        machine === "printer" && carrier === "electricity"
          ? { factor: times(1.5), by: "measured" }
          : undefined,
      boiler: () => undefined,
    });
    const byDraws = calibrated(program, given(new Float64Array(100).fill(1.5)));
    const one = (of: typeof program) => accountOf(of, 100, 1).indicators.pigment.get("energy");
    expect(one(byDraws)).toEqual(one(byFormula));
  });

  it("goes with its own draw, not with its middle", () => {
    const draws = Float64Array.from({ length: 100 }, (_, i) => 1 + i / 100);
    const account = accountOf(calibrated(program, given(draws)), 100, 1);
    const plain = accountOf(program, 100, 1);
    const [after, before] = [account, plain].map(({ indicators }) =>
      indicators.pigment.get("electricity")!,
    );
    expect(after![0]).toBe(before![0]);
    expect(after![99]! / before![99]!).toBeGreaterThan(after![50]! / before![50]!);
    expect(after![50]).toBeGreaterThan(before![50]!);
  });

  it("is refused for more draws than it has", () => {
    const few = calibrated(program, given(new Float64Array(10).fill(1)));
    expect(() => accountOf(few, 100, 1)).toThrow("has 10 draws, not 100");
  });

  it("leaves other machines alone", () => {
    const { of, boiler } = given(new Float64Array(10).fill(2));
    expect(of("main", "stenter", "electricity")).toBeUndefined();
    expect(of("main", "printer", "water")).toBeUndefined();
    expect(boiler("main")).toBeUndefined();
  });
});

describe("names of flows", () => {
  it("belong to carriers that meters count", () => {
    expect(carrierOf("heat.burner")).toBe("gas");
    expect(carrierOf("ink")).toBeUndefined();
    expect(isBoilerInput("fuel.natural-gas")).toBe(true);
    expect(isBoilerInput("electricity")).toBe(false);
  });
});
