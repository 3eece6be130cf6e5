import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { type Ended, emptyFolders, millrace } from "../tools/command.js";
import { changed, LATE, millIn } from "./mills.js";

// Processes are slow to start on a busy machine.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const emptyFolder = emptyFolders();
let mill = "";

beforeAll(() => {
  mill = millIn(emptyFolder());
});

const FEW = ["--as-of", LATE, "--draws", "100"] as const;

interface Played {
  readonly name: string;
  readonly asked: boolean;
  readonly differs: readonly string[];
  readonly change: { readonly median: number } | null;
}

function explained(...words: readonly string[]): Ended {
  return millrace(mill, "explain", "water", "--rows", "0", ...FEW, ...words);
}

function playedBy(...words: readonly string[]): readonly Played[] {
  const { code, out } = explained("--json", ...words);
  expect(code).toBe(0);
  return (JSON.parse(out) as { readonly scenarios: readonly Played[] }).scenarios;
}

describe("--set", () => {
  it("makes one scenario of all that is set, named by its text", () => {
    const [one, ...others] = playedBy(
      ...["--set", "routes.reactive.wash.fresh-water={ value: 12, low: 11, high: 13 }"],
      ...["--set", "sites.main.place=NOR"],
    );
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      asked: true,
      name: "--set routes.reactive.wash.fresh-water={ value: 12, low: 11, high: 13 } --set sites.main.place=NOR",
      differs: [
        "sites.main.place: NOR instead of PRT",
        "routes.reactive.settings.wash.fresh-water: 12 (11 to 13) instead of 25 (18 to 35)",
      ]
        .sort((a, b) => (a.startsWith("routes") ? -1 : b.startsWith("routes") ? 1 : 0))
        .reverse(),
    });
    expect(one?.change?.median).toBeLessThan(0);
  });

  it("says that it is not the mill, and leaves the mill's figures alone", () => {
    const plain = explained();
    const set = explained("--set", "sites.main.place=NOR");
    expect(set.out).toContain("What if (not the mill):");
    expect(set.out).toContain("--set sites.main.place=NOR: sites.main.place: NOR instead of PRT");
    expect(set.out.split("\n").slice(0, 3)).toEqual(plain.out.split("\n").slice(0, 3));
  });

  it.each([
    ["sites.main.plce=NOR", /under sites\.main one of place, words, .* Did you mean place\?/],
    ["gwp=AR5", /one of sites, routes, counterparts, instead, finish, rejects, not "gwp=AR5"/],
    ["sites.main.boiler.efficiency=9", /a value from .* at sites\.main\.settings\.boiler\.eff/],
    ["sites.main.place=NOT", /a place whose grid .* at sites\.main\.place, not "NOT"/],
    ["rejects=often", /a multiple from 0 to 20|rejected area as a multiple/],
    ["sites.main.place", /KEY=VALUE such as/],
    ["sites.main.words={", /a value as the plant file would have it/],
  ])("refuses %s in one line", (set, said) => {
    const { code, out, err } = explained("--set", set);
    expect([code, out]).toEqual([2, ""]);
    expect(err.trim().split("\n")).toHaveLength(1);
    expect(err).toMatch(said);
  });

  it("refuses a key that is set twice", () => {
    const { code, err } = explained("--set", "rejects=2", "--set", "rejects=3");
    expect(code).toBe(2);
    expect(err).toContain("every key once; rejects stands there twice");
  });
});

describe("scenarios of the plant file", () => {
  it("stand in the report and its data, each with its change", () => {
    const folder = millIn(emptyFolder());
    changed(
      folder,
      "plant.yaml",
      (text) =>
        `${text}\nscenarios:\n  other grid: { note: elsewhere, sites: { main: { place: NOR } } }\n`,
    );
    const { code, err } = millrace(
      folder,
      ...["report", "--formats", "json,html", ...FEW, "--set", "rejects=2"],
    );
    expect(code).toBe(0);
    expect(err).toContain("warning: --set rejects=2 is a what-if beside the mill");
    const { scenarios } = JSON.parse(readFileSync(join(folder, "out/report.json"), "utf8")) as {
      readonly scenarios: { readonly draws: number; readonly whatIf: readonly Played[] };
    };
    expect(scenarios.draws).toBe(100);
    expect(scenarios.whatIf.map(({ name }) => name)).toEqual(["other grid", "--set rejects=2"]);
    const page = readFileSync(join(folder, "out/report.html"), "utf8");
    expect(page).toContain("says nothing of the mill as it is");
  });

  it("that leave no accepted area are refused by name", () => {
    const folder = millIn(emptyFolder());
    changed(folder, "log.csv", (text) => {
      const [head = "", ...rows] = text.trimEnd().split("\n");
      const at = head.split(",").indexOf("rejected_m");
      const length = head.split(",").indexOf("length_m");
      expect(at).toBeGreaterThan(0);
      const half = rows.map((row) => {
        const cells = row.split(",");
        cells[at] = String(Number(cells[length]) / 2);
        return cells.join(",");
      });
      return [head, ...half, ""].join("\n");
    });
    const { code, err } = millrace(folder, "explain", "water", ...FEW, "--set", "rejects=9");
    expect(code).toBe(3);
    expect(err).toContain("a multiple that leaves accepted area");
  });
});
