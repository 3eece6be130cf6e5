import MarkdownIt from "markdown-it";
import { describe, expect, it } from "vitest";
import { loadFactors } from "../src/factors/load.js";
import type { TextFile } from "../src/factors/yaml-text.js";
import { medianOf } from "../src/numbers/distributions.js";
import { SUBSTANCES } from "../src/steps/flows.js";
import { readUnit } from "../src/units/dimension.js";
import { FACTOR_FILES, SHIPPED } from "./tools/shipped-factors.js";
import { textOf } from "./tools/tree.js";

const factors = [...SHIPPED.factors.values()];
const values = factors.flatMap((factor) => factor.values.map((value) => ({ factor, value })));

describe("shipped factors", () => {
  it("are some hundreds", () => {
    expect(factors.length).toBeGreaterThan(450);
  });

  it("stand in the file of their family", () => {
    const isSources = ({ name }: TextFile): boolean => name.endsWith("/sources.yaml");
    for (const file of FACTOR_FILES.filter((one) => !isSources(one))) {
      const alone = loadFactors([...FACTOR_FILES.filter(isSources), file], []).value;
      const families = new Set([...(alone?.factors.keys() ?? [])].map((id) => id.split(".", 1)[0]));
      expect(`factors/${[...families].join()}.yaml`).toBe(file.name);
    }
  });

  it("have words of their own and a unit that can be read", () => {
    for (const { id, words, unit } of factors) {
      expect(words.length, id).toBeGreaterThan(5);
      expect(words, id).not.toContain("*");
      expect(readUnit(unit), id).toBeDefined();
    }
  });

  it("have plausible values, dates in order and scores from 1 to 5", () => {
    for (const { factor, value } of values) {
      const [low, high] = factor.plausible;
      expect(value.spread.value, factor.id).toBeGreaterThanOrEqual(low);
      expect(value.spread.value, factor.id).toBeLessThanOrEqual(high);
      expect(medianOf(value.spread), factor.id).toBeGreaterThanOrEqual(low);
      expect(value.entered, factor.id).toMatch(/^\d{4}-\d{2}-\d{2}$/);
      for (const score of Object.values(value.quality)) expect([1, 2, 3, 4, 5]).toContain(score);
    }
    for (const factor of factors) {
      const dates = factor.values.map(({ from, entered }) => `${from} ${entered}`);
      expect(dates, factor.id).toEqual([...new Set(dates)].sort().reverse());
    }
  });

  it("have a source each, and no source is idle", () => {
    const used = new Set(values.map(({ value }) => value.source));
    expect([...used].filter((key) => !SHIPPED.sources.has(key))).toEqual([]);
    expect([...SHIPPED.sources.keys()].filter((key) => !used.has(key))).toEqual([]);
  });

  it("own up to what is guessed", () => {
    for (const { factor, value } of values) {
      const read = SHIPPED.sources.get(value.source)?.read;
      const guessed = read === "own estimate" || read === "common practice";
      if (!guessed || value.spread.shape === "fixed") continue;
      expect(value.quality.reliability, factor.id).toBeGreaterThanOrEqual(4);
      expect(value.quality.completeness, factor.id).toBeGreaterThanOrEqual(4);
    }
  });

  it("name the day a text was opened, or say that it was not", () => {
    for (const [key, { read }] of SHIPPED.sources) {
      expect(read, key).toMatch(/^(memory|common practice|own estimate|\d{4}-\d{2}-\d{2})$/);
    }
  });
});

describe("page on how to overrule", () => {
  const blocks = new MarkdownIt()
    .parse(textOf("factors/README.md"), {})
    .filter(({ type, info }) => type === "fence" && info === "yaml")
    .map(({ content }) => content);

  it("shows files that load and overrule", () => {
    const [mine = "", sources = ""] = blocks;
    expect(blocks).toHaveLength(2);
    const own = loadFactors(FACTOR_FILES, [
      { name: "mine.yaml", text: mine },
      { name: "sources.yaml", text: sources },
    ]);
    expect(own.problems).toEqual([]);
    expect(own.value?.factors.get("wash-range.fresh-water")).toMatchObject({
      overruled: true,
      values: [{ spread: { shape: "normal", value: 18.5 } }],
    });
  });
});

describe("factors of substances", () => {
  const PROPERTIES = [
    "cod",
    "nitrogen",
    "salt",
    "carbon",
    "fixed",
    "evaporated-dry-heat",
    "evaporated-washed",
  ];

  it("have every property, and no other substance has", () => {
    const needed = SUBSTANCES.flatMap((name) => PROPERTIES.map((p) => `substance.${name}.${p}`));
    needed.push("substance.crosslinker.formaldehyde");
    const shipped = factors.map(({ id }) => id).filter((id) => id.startsWith("substance."));
    expect(shipped.sort()).toEqual(needed.sort());
  });

  it("are what recipes are made of", () => {
    const named = factors
      .filter(({ id }) => id.startsWith("recipe."))
      .map(({ id }) => id.split(".")[2]);
    expect(named.filter((name) => !SUBSTANCES.some((known) => known === name))).toEqual([]);
  });
});
