import { describe, expect, it } from "vitest";
import { type DegreeDaysRead, readDegreeDays } from "../../src/meters/degree-days.js";

async function* bytes(text: string): AsyncGenerator<Uint8Array> {
  yield await Promise.resolve(new TextEncoder().encode(text));
}

function read(...rows: readonly string[]): Promise<DegreeDaysRead> {
  return readDegreeDays("degree_days.csv", bytes(`${rows.join("\n")}\n`));
}

describe("readDegreeDays", () => {
  it("reads months with their base temperature", async () => {
    const { degreeDays, problems } = await read(
      "month,degree_days,base_c",
      "2026-01,412,15",
      "2026-02,355.5,15",
    );
    expect(problems).toEqual([]);
    expect(degreeDays?.base).toBe(15);
    expect([...(degreeDays?.byMonth ?? [])]).toEqual([
      ["2026-01", 412],
      ["2026-02", 355.5],
    ]);
  });

  it("refuses a file without base temperature", async () => {
    const { degreeDays, problems } = await read("month,degree_days", "2026-01,412");
    expect(degreeDays).toBeUndefined();
    expect(problems.map(({ code }) => code)).toEqual(["degree-days-base_c"]);
  });

  it("sets aside rows that cannot be, each by what is wrong with it", async () => {
    const { degreeDays, problems } = await read(
      "month,degree_days,base_c",
      "2026-01,412,15",
      "2026-01,400,15",
      "January,400,15",
      "2026-03,-3,15",
      "2026-04,90,18",
      "2026-05,40,95",
    );
    expect(problems.map(({ code, line }) => [code, line])).toEqual([
      ["degree-days-month", 3],
      ["degree-days-month", 4],
      ["degree-days-degree_days", 5],
      ["degree-days-base_c", 6],
      ["degree-days-base_c", 7],
    ]);
    expect(degreeDays?.byMonth.size).toBe(1);
  });
});
