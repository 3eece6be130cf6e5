import { describe, expect, it } from "vitest";
import { PATTERNS, sharesHtml } from "../../../src/report/html/strip.js";
import { pageOf, read } from "./made.js";

describe("sharesHtml", () => {
  it("draws parts as long as the shares, each in its pattern and in words", () => {
    const shares = { measured: 0.5, allocated: 0, modelled: 0.375, default: 0.125 };
    const bar = read(sharesHtml(shares, pageOf([])));
    const parts = [...bar.querySelectorAll(".bar rect")].map((part) =>
      ["x", "width", "fill"].map((name) => part.getAttribute(name)),
    );
    expect(parts).toEqual([
      ["0%", "50%", "url(#made-measured)"],
      ["50%", "37.5%", "url(#made-modelled)"],
      ["87.5%", "12.5%", "url(#made-default)"],
    ]);
    expect([...bar.querySelectorAll("li")].map((item) => item.textContent)).toEqual([
      "measured 50\u00a0%",
      "allocated 0\u00a0%",
      "modelled 38\u00a0%",
      "default 12\u00a0%",
    ]);
    for (const { id } of read(PATTERNS).querySelectorAll("pattern")) {
      expect(id).toMatch(/^made-(measured|allocated|modelled|default)$/);
    }
    expect(read(PATTERNS).querySelectorAll("pattern")).toHaveLength(4);
  });

  it("refuses shares that do not add up", () => {
    const shares = { measured: 0.5, allocated: 0, modelled: 0, default: 0 };
    expect(() => sharesHtml(shares, pageOf([]))).toThrow("add up to 1");
  });
});
