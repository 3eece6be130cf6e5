import { describe, expect, it } from "vitest";
import { dayAfter, type DialReading, dialSteps } from "../../src/meters/registers.js";

const at = (line: number, day: string, figure: number, anew?: number): DialReading => ({
  line,
  day,
  figure,
  estimated: false,
  ...(anew === undefined ? {} : { anew }),
});

describe("dialSteps", () => {
  it("takes figures by day, whatever their order", () => {
    const { steps } = dialSteps({}, [at(3, "2026-03-31", 30), at(2, "2026-02-28", 10)]);
    expect(steps).toEqual([
      { line: 3, from: "2026-03-01", to: "2026-03-31", steps: 20, estimated: false },
    ]);
  });

  it("begins anew only from its last tenth, and only with digits", () => {
    const rows = [at(2, "2026-01-31", 990), at(3, "2026-02-28", 20)];
    expect(dialSteps({ digits: 3 }, rows).steps[0]?.steps).toBe(30);
    expect(dialSteps({}, rows).faults).toEqual([{ line: 3, figure: 20, before: 990 }]);
    const early = [at(2, "2026-01-31", 500), at(3, "2026-02-28", 20)];
    expect(dialSteps({ digits: 3 }, early).faults).toHaveLength(1);
  });

  it("goes on from the first figure of a new meter", () => {
    const { steps } = dialSteps({}, [
      at(2, "2026-01-31", 100),
      at(3, "2026-02-10", 110, 5),
      at(4, "2026-02-28", 9),
    ]);
    expect(steps.map(({ steps: moved }) => moved)).toEqual([10, 4]);
  });
});

describe("dayAfter", () => {
  it("knows leap years", () => {
    expect(dayAfter("2024-02-28")).toBe("2024-02-29");
    expect(dayAfter("2025-12-31")).toBe("2026-01-01");
  });
});
