import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { emptyFolders, millrace } from "../tools/command.js";
import { changed, LATE, millIn } from "./mills.js";

vi.setConfig({ testTimeout: 60_000 });

const emptyFolder = emptyFolders();
const DATA = ["--as-of", LATE, "--draws", "100", "--formats", "csv,json"] as const;

describe("invest", () => {
  it("writes flows, inputs and data for the mill that start lays out, the same each time", () => {
    const mill = millIn(emptyFolder());
    const { code, out, err } = millrace(mill, "invest", ...DATA);
    expect(code).toBe(0);
    expect(out.trim().split("\n")).toEqual([
      "out/invest.json",
      "out/invest-cash-flows.csv",
      "out/invest-inputs.csv",
    ]);
    expect(err).toContain("expected a log of about a year");
    const first = readFileSync(join(mill, "out", "invest.json"), "utf8");
    expect(millrace(mill, "invest", ...DATA).code).toBe(0);
    expect(readFileSync(join(mill, "out", "invest.json"), "utf8")).toBe(first);
  });

  it("refuses a file with faults, naming all of them, and writes nothing", () => {
    const mill = millIn(emptyFolder());
    changed(mill, "invest.yaml", (text) =>
      text.replace("basis: real", "basis: nominal").replace("{ value: 1.4,", "{ value: -1.4,"),
    );
    const { code, out } = millrace(mill, "invest", ...DATA, "--json");
    expect(code).toBe(3);
    const { problems } = JSON.parse(out) as {
      readonly problems: readonly { readonly code: string }[];
    };
    expect(problems.map((problem) => problem.code)).toEqual([
      "real-and-nominal-mixed",
      "price-below-zero",
    ]);
    expect(existsSync(join(mill, "out"))).toBe(false);
  });

  it.each([
    ["a client that is not in the log", "Client South", "Client Soth", "a client of the log"],
    [
      "a route that is not in the plant file",
      "to: pigment-calender",
      "to: pigment-oven",
      "a pigment route",
    ],
    [
      "a key that the plant file does not know",
      "sequence: counter-current",
      "sequenz: counter-current",
      "options.better wash.plant",
    ],
  ])("refuses %s", (_, before, after, words) => {
    const mill = millIn(emptyFolder());
    changed(mill, "invest.yaml", (text) => text.replace(before, after));
    const { code, err } = millrace(mill, "invest", ...DATA);
    expect(code).toBe(3);
    expect(err).toContain("invest.yaml, line ");
    expect(err).toContain(words);
  });

  it("says what to do where there is no file, and takes another by name", () => {
    const mill = millIn(emptyFolder());
    const { code, err } = millrace(mill, "invest", "other.yaml", ...DATA);
    expect([code, err]).toEqual([3, expect.stringContaining("millrace start")]);
    expect(readdirSync(mill)).not.toContain("out");
  });

  it("wants a number of draws that can show a chance", () => {
    const mill = millIn(emptyFolder());
    expect(millrace(mill, "invest", "--draws", "5").code).toBe(2);
  });

  it("rests the year on the days asked for, and refuses days out of order", () => {
    const mill = millIn(emptyFolder());
    expect(millrace(mill, "invest", ...DATA).code).toBe(0);
    const read = () =>
      JSON.parse(readFileSync(join(mill, "out", "invest.json"), "utf8")) as {
        readonly options: readonly { readonly npv: string }[];
      };
    const whole = read().options[1]?.npv;
    const half = millrace(mill, "invest", ...DATA, "--from", "2026-01-01", "--to", "2026-12-31");
    expect(half.code).toBe(0);
    expect(half.err).not.toContain("expected a log of about a year");
    expect(read().options[1]?.npv).not.toBe(whole);
    expect(millrace(mill, "invest", "--from", "2026-02-01", "--to", "2026-01-01").code).toBe(2);
  });

  it("is judged by check, which ends otherwise where the file is at fault", () => {
    const mill = millIn(emptyFolder());
    const fine = millrace(mill, "check", "--as-of", LATE);
    expect([fine.code, fine.out]).toEqual([0, expect.stringContaining("invest.yaml: 3 options")]);
    changed(mill, "invest.yaml", (text) =>
      text.replace("client: Client South", "client: Client Soth"),
    );
    const wrong = millrace(mill, "check", "--as-of", LATE);
    expect(wrong.code).toBe(3);
    expect(wrong.err).toMatch(/invest\.yaml, line \d+, key moves\[0\]\.client: "Client Soth"/);
    const told = JSON.parse(millrace(mill, "check", "--as-of", LATE, "--json").out) as {
      readonly invest: { readonly problems: readonly { readonly code: string }[] };
    };
    expect(told.invest.problems.map(({ code }) => code)).toContain("unknown-name");
  });
});
