import { beforeAll, describe, expect, it, vi } from "vitest";
import { gainOf } from "../../src/invest/gain.js";
import { readInvest } from "../../src/invest/read-invest.js";
import { differencesOf, differenceWarnings, worthAt } from "../../src/invest/two-files.js";
import { centralWorld } from "../../src/invest/world.js";
import { sentence } from "../../src/problems/sentence.js";
import { DEMO_TEXT, type DemoMill, demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let mill: DemoMill;

beforeAll(async () => {
  mill = await demoMill();
});

const read = (change: (text: string) => string = (text) => text) =>
  readInvest({ name: "invest.yaml", text: change(DEMO_TEXT) }).value!;

describe("prices of two files", () => {
  it("that are more than 5 % apart are named with both keys and values", () => {
    const file = read();
    const differences = differencesOf(file, mill.plant);
    expect(differences).toMatchObject([
      {
        key: ["prices", "ink", "pigment"],
        value: 12.9,
        plantKey: "sites.main.tariffs.ink.pigment",
        plantValue: 17,
      },
    ]);
    const [warning] = differenceWarnings(file, differences, "plant.yaml");
    const line = DEMO_TEXT.split("\n").findIndex((text) => /^ {4}pigment:/.test(text)) + 1;
    expect(warning).toMatchObject({ severity: "warning", line });
    expect(sentence(warning!)).toContain(
      'key prices.ink.pigment: "12.9"; expected the 17 that plant.yaml has under sites.main.tariffs.ink.pigment',
    );
  });

  it("are reckoned at the plant file's price", () => {
    const study = demoStudy(mill);
    const [difference] = differencesOf(read(), mill.plant);
    const held = centralWorld(new Map([["prices.ink.pigment", 17]]));
    expect(worthAt(study, difference!)).toBe(gainOf(study, study.project, held).worth);
  });

  it.each([
    ["a change of the charge by volume", "per_m3: 1.1", "per_m3: 1.2", "effluent.tariffs.0.per_m3"],
    ["a price a little off", "value: 1.35,", "value: 1.40,", undefined],
    ["a price off by more", "value: 1.35,", "value: 1.45,", "prices.water"],
  ])("answer for %s", (_, before, after, key) => {
    const found = differencesOf(
      read((text) => text.replace(before, after).replace("high: 1.5,", "high: 1.6,")),
      mill.plant,
    )
      .map((one) => one.key.join("."))
      .sort();
    expect(found).toEqual(
      key === undefined ? ["prices.ink.pigment"] : [...new Set(["prices.ink.pigment", key])].sort(),
    );
  });

  it("are set side by side in the currency of the study", () => {
    const file = read((text) =>
      text
        .replace(
          "currency: EUR\n",
          "currency: EUR\nrates: { USD: { value: 0.5, date: 2026-10-01, tag: invoice } }\n",
        )
        .replace(
          "value: 14,\n        low: 13.5,\n        high: 14.5,\n        currency: EUR",
          "value: 28,\n        low: 27,\n        high: 29,\n        currency: USD",
        ),
    );
    expect(differencesOf(file, mill.plant).map(({ input }) => input)).toEqual([
      "prices.ink.pigment",
    ]);
  });
});
