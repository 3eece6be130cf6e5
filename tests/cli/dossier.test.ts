import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { millrace } from "../tools/command.js";
import { changed, LATE, millIn } from "./mills.js";

const folder = mkdtempSync(join(tmpdir(), "millrace-dossier-"));
const DAY = ["--as-of", LATE] as const;

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function pageIn(...path: readonly string[]): string {
  return readFileSync(join(folder, ...path, "dossier.html"), "utf8");
}

describe("millrace factors --dossier", { timeout: 60_000 }, () => {
  it("writes a page without a mill at hand, on the factors asked for", () => {
    const { code, out } = millrace(folder, "factors", "wash-range", "--dossier", ...DAY);
    expect(code).toBe(0);
    expect(out.trim()).toBe(join("out", "dossier.html"));
    const page = pageIn("out");
    expect(page).toContain("wash-range.fresh-water");
    expect(page).toContain("which millrace start lays out");
    expect(page).not.toContain("calender.standing");
  });

  it("takes use and doubt from the mill that is named, and says what it wrote as data", () => {
    const mill = millIn(folder);
    changed(mill, "plant.yaml", (text) =>
      text.replace(/^house: .*$/m, "house: Alder Mill (invented)"),
    );
    const { code, out } = millrace(
      folder,
      "factors",
      "steamer.flush",
      "--dossier",
      "--plant",
      join("mill", "plant.yaml"),
      "--out",
      "named",
      "--json",
      ...DAY,
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({ written: [join("named", "dossier.html")] });
    expect(pageIn("named")).toContain("Alder Mill (invented)");
    expect(pageIn("named")).not.toContain("which millrace start lays out");
  });

  it("shows a factor that a file beside it overrules, with or without a mill", () => {
    const beside = join(folder, "own");
    mkdirSync(join(beside, "factors"), { recursive: true });
    writeFileSync(
      join(beside, "factors", "own.yaml"),
      `factors:
  wash-range.fresh-water:
    unit: L/kg
    values:
      - value: 18.5
        spread: { shape: normal, low: 17, high: 20 }
        from: 2026-01-01
        entered: 2026-11-01
        year: 2026
        region: here
        source: own-estimate
        quality: { reliability: 1, completeness: 2, time: 1, place: 1, technology: 1 }
`,
    );
    expect(millrace(beside, "factors", "fresh-water", "--dossier", ...DAY).code).toBe(0);
    expect(pageIn("own", "out")).toContain("18.5 L/kg");
    expect(pageIn("own", "out")).toContain("by a file of the mill");
  });

  it("writes nothing when no factor is found", () => {
    const { code, out } = millrace(folder, "factors", "qqqqqq", "--dossier", "--out", "none");
    expect(code).toBe(0);
    expect(out).toMatch(/No factor has "qqqqqq"/);
    expect(existsSync(join(folder, "none"))).toBe(false);
  });

  it("refuses a plant file that is not there", () => {
    const { code, out } = millrace(folder, "factors", "--dossier", "--plant", "no.yaml", "--json");
    expect(code).toBe(3);
    expect(JSON.parse(out)).toMatchObject({ problems: [{ code: "file-missing" }] });
  });
});
