import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { millrace } from "../tools/command.js";

const folder = mkdtempSync(join(tmpdir(), "millrace-dossier-"));

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("millrace factors --dossier", () => {
  it("writes a page without a mill at hand, on the factors asked for", { timeout: 60_000 }, () => {
    const { code, out } = millrace(
      folder,
      "factors",
      "wash-range",
      "--dossier",
      "--as-of",
      "2026-11-25",
    );
    expect(code).toBe(0);
    expect(out.trim()).toBe(join("out", "dossier.html"));
    const page = readFileSync(join(folder, "out", "dossier.html"), "utf8");
    expect(page).toContain("wash-range.fresh-water");
    expect(page).not.toContain("calender.standing");
  });

  it("writes nothing when no factor is found", { timeout: 60_000 }, () => {
    const { code, out } = millrace(folder, "factors", "qqqqqq", "--dossier", "--out", "none");
    expect(code).toBe(0);
    expect(out).toMatch(/No factor has "qqqqqq"/);
    expect(existsSync(join(folder, "none"))).toBe(false);
  });
});
