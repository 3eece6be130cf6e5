import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { assess, type Assessment } from "../../../src/cli/assess.js";
import { composeReport } from "../../../src/report/compose/compose.js";
import type { Block, ReportDocument } from "../../../src/report/document.js";
import { TOP } from "../../tools/tree.js";

// The demo takes its time on a busy machine.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const TEMPLATE = readFileSync(join(TOP, "templates/report.md"), "utf8");

async function demo(client?: string): Promise<Assessment> {
  const { assessment } = await assess([join(TOP, "examples/demo/log.csv")], {
    plant: join(TOP, "examples/demo/plant.yaml"),
    asOf: "2026-11-25",
    per: "m2",
    draws: 1000,
    seed: 1,
    ...(client === undefined ? {} : { client }),
  });
  if (assessment === undefined) throw new Error("The demo gives no report.");
  return assessment;
}

const table = (report: ReportDocument, id: string): readonly (readonly string[])[] => {
  const found = report.blocks.find((block) => "id" in block && block.id === id) as
    Extract<Block, { kind: "table" }> | undefined;
  return (found?.rows ?? []).map((row) =>
    row.map(({ runs }) => runs.map((run) => ("text" in run ? run.text : "")).join("")),
  );
};

describe("the chapter on meters of the demo", () => {
  let whole: Assessment;
  let report: ReportDocument;
  beforeAll(async () => {
    whole = await demo();
    report = composeReport(whole.input, TEMPLATE);
  }, 120_000);

  it("sets savings without and with meters side by side, narrower with them", () => {
    const rows = table(report, "meters-side-by-side");
    const widths = (name: string): readonly number[] => {
      const row = rows.find(([words]) => words?.startsWith(name)) ?? [];
      return [Number(row[2]), Number(row[4])];
    };
    for (const name of ["Water", "Final energy", "Electricity"]) {
      const [before = NaN, after = NaN] = widths(name);
      expect(after, name).toBeLessThan(0.6 * before);
    }
    const [before = NaN, after = NaN] = widths("COD");
    expect(Math.abs(after - before)).toBeLessThanOrEqual(2);
  });

  it("gives every share one tier, the same as the provenance it is counted under", () => {
    const tiers = table(report, "meter-tiers");
    const coverage = table(report, "meter-coverage");
    expect(tiers.length).toBe(coverage.length);
    const part = (cells: readonly string[], from: number, to: number): number =>
      cells.slice(from, to).reduce((sum, cell) => sum + parseFloat(cell), 0);
    tiers.forEach((row, at) => {
      const known = coverage[at] ?? [];
      // Printed to whole percents: seven roundings, then as many as are compared.
      expect(Math.abs(part(row, 2, 9) - 100)).toBeLessThanOrEqual(3.5);
      expect(Math.abs(part(row, 2, 4) - parseFloat(known[2] ?? ""))).toBeLessThanOrEqual(1.5);
      expect(Math.abs(part(row, 4, 6) - parseFloat(known[4] ?? ""))).toBeLessThanOrEqual(1.5);
      expect(Math.abs(part(row, 6, 7) - parseFloat(known[5] ?? ""))).toBeLessThanOrEqual(1.5);
    });
    const by = new Map(
      (whole.input.calibrated?.states ?? []).map((state) => [
        `${state.machine} ${state.carrier}`,
        state.tier,
      ]),
    );
    expect(by.get("wash-range water")).toBe("T2");
    expect([...by.values()]).toContain("T4");
    // Steam meters of machines tell nothing of the fuel that raised it.
    expect(by.get("boiler boiler")).toBe("T4");
  });

  it("sets effluent and samples beside the model, and says what they cannot tell", () => {
    const months = [...new Set(whole.input.groups.map(({ key }) => key.month))].sort();
    const outflow = {
      site: Object.keys(whole.input.plant.sites)[0] ?? "",
      months,
      effluent: 2_000_000,
      samples: 4,
      below: 1,
      strength: { value: 0.5, low: 0.49, high: 0.51 },
      odd: [`${months[0] ?? ""}-09`],
    };
    const of = (change: object): ReportDocument =>
      composeReport({ ...whole.input, outflows: [{ ...outflow, ...change }] }, TEMPLATE);
    const full = of({});
    const rows = table(full, `meter-outflow-${outflow.site}`);
    expect(rows[0]?.[0]).toBe("Effluent, m³");
    expect(rows[0]?.[1]).toMatch(/^2\s000$/u);
    expect(rows[1]?.[1]).toMatch(/^1\s000 \(980\D+1\s020\)$/u);
    expect(rows[0]?.[2]).toMatch(/\d/);
    const text = JSON.stringify(full);
    expect(text).toContain("more than five times");
    expect(text).toContain("one drain does not tell machines or routes apart");
    // Effluent of a part of the year is not set beside the model of all of it.
    const part = table(of({ months: months.slice(1) }), `meter-outflow-${outflow.site}`);
    expect(part[0]?.[2]).toBe("not set beside");
  }, 60_000);

  it("tells each machine without and with meters, narrower with its own", () => {
    const rows = table(report, "meter-corrections");
    const ends = (cell = ""): readonly number[] =>
      /\((.*) to (.*)\)/u
        .exec(cell.replace(/[\s\u202f]/gu, (sign) => (sign === " " ? " " : "")))
        ?.slice(1)
        .map(Number) ?? [];
    const own = rows.filter(([, , known]) => known === "own, T2");
    expect(own.length).toBeGreaterThan(6);
    for (const [machine, quantity, , before, after] of own) {
      const [[low = NaN, high = NaN], [from = NaN, to = NaN]] = [ends(before), ends(after)];
      expect(to - from, `${machine ?? ""} ${quantity ?? ""}`).toBeLessThan(0.7 * (high - low));
    }
  });

  it("counts most of water and energy as measured, and names the lower arm", () => {
    const rows = table(report, "meter-coverage");
    for (const name of ["Water withdrawn", "Final energy"]) {
      const at = rows.findIndex(([words]) => words === name);
      const pair = rows.slice(at, at + 2);
      for (const row of pair) expect(parseFloat(row[2] ?? "")).toBeGreaterThan(50);
      expect(pair.filter(([, arm]) => arm?.endsWith("lower") === true)).toHaveLength(1);
    }
  });

  it("shares site meters so that every column adds up to the meter", () => {
    const rows = table(report, "meter-allocation");
    const number = (text = ""): number => Number(text.replace(/\s/gu, ""));
    let start = 0;
    rows.forEach((row, end) => {
      if (row[1] !== "all") return;
      for (const column of [2, 3, 4, 5]) {
        const sum = rows.slice(start, end).reduce((all, one) => all + number(one[column]), 0);
        expect(sum).toBe(number(row[column]));
      }
      expect(number(row[6])).toBeLessThan(number(row[2]));
      start = end + 1;
    });
    expect(start).toBe(rows.length);
  });

  it("draws one picture a site meter and a table for every meter", () => {
    const ids = report.blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(ids.filter((id) => /^meter-(water|gas|power)-main$/.test(id))).toHaveLength(3);
    const meters = Object.keys(whole.input.plant.text.meters ?? {});
    for (const meter of meters) expect(ids).toContain(`meter-${meter}-table`);
  });

  it("corrects the report of one client by the meters of the house, without showing them", async () => {
    const one = await demo("Client Hazel");
    const factor = ({ input }: Assessment): number | undefined =>
      input.calibrated?.states.find(({ machine }) => machine === "wash-range")?.corrections[7];
    expect(factor(one)).toBe(factor(whole));
    expect(one.input.meters).toEqual([]);
    const said = composeReport(one.input, TEMPLATE);
    expect(table(said, "meter-balances")).toEqual([]);
    expect(table(said, "meter-coverage").length).toBeGreaterThan(0);
  }, 120_000);
});
