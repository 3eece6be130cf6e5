import { describe, expect, it } from "vitest";
import { lintWording } from "../../src/report/wording.js";

describe("lintWording", () => {
  it.each([
    ["A green route.", "green", 2],
    ["The Greenest mill", "Greenest", 4],
    ["eco-friendly print", "eco-friendly", 0],
    ["An eco route", "eco", 3],
    ["environmentally safe ink", "environmentally safe", 0],
    ["Nature\u2019s friend", "Nature\u2019s friend", 0],
    ["our sustainability story", "sustainability", 4],
    ["climate\u2011neutral cloth", "climate\u2011neutral", 0],
    ["net-zero by then", "net-zero", 0],
    ["low carbon", "low carbon", 0],
    ["an energy-efficient dryer", "energy-efficient", 3],
    ["clean and fast", "clean", 0],
    ["cleaner effluent", "cleaner", 0],
    ["non toxic", "non toxic", 0],
    ["water-free", "water-free", 0],
    ["a waterless print", "waterless", 2],
    ["zero effluent", "zero effluent", 0],
    ["biodegradable", "biodegradable", 0],
    ["good for the planet", "planet", 13],
    ["a natural choice", "natural", 2],
    ["the best supplier", "best", 4],
    ["guaranteed savings", "guaranteed", 0],
    ["a water footprint of 3 L", "water footprint", 2],
    ["ISO 14046 compliant", "compliant", 10],
  ])("finds the banned word of %j", (text, word, index) => {
    expect(lintWording(text)).toEqual([{ word, index }]);
  });

  it.each([
    "Cleaning of the belt takes 4 L per lot.",
    "The evergreen pattern and the economy of scale",
    "Natural gas at its net calorific value",
    "Written for the sustainability officer of the client",
    "This is not a water footprint but an inventory.",
    "best available techniques of the sector",
    "a purely numerical result",
    "Zero readings were missing; 0 L were evaporated.",
    "bestow, unconsciousness, planetary gear",
    "",
  ])("lets %j pass", (text) => {
    expect(lintWording(text)).toEqual([]);
  });

  it("names every word, in order", () => {
    const found = lintWording("Pure, harmless and pure again.");
    expect(found).toEqual([
      { word: "Pure", index: 0 },
      { word: "harmless", index: 6 },
      { word: "pure", index: 19 },
    ]);
  });

  it("spares only the allowed wording, not its neighbour", () => {
    expect(lintWording("natural gas is a natural fuel")).toEqual([{ word: "natural", index: 17 }]);
  });
});
