import { describe, expect, it } from "vitest";
import { SCOPE_FILLS } from "../../src/charts/part-fills.js";
import { scopeBars, type ScopeBarsData } from "../../src/charts/scope-bars.js";
import { NAMES } from "./sample-data.js";
import { at, bars, sound, texts } from "./sound.js";

const DATA: ScopeBarsData = {
  quantity: "CO₂e, partial, gate to gate",
  unit: "g CO₂e/m²",
  digits: 0,
  routes: {
    dye: {
      name: NAMES.dye,
      scope1: 300,
      location: { scope2: 200, total: { value: 500, low: 450, high: 560 } },
      market: { scope2: 100, total: { value: 400, low: 350, high: 450 } },
    },
    pigment: {
      name: NAMES.pigment,
      scope1: 100,
      location: { scope2: 150, total: { value: 250, low: 220, high: 280 } },
      market: { scope2: 0, total: { value: 100 } },
    },
  },
};

describe("picture by scope", () => {
  const drawing = sound(() => scopeBars(DATA));

  it("gives each route a bar for either basis and never adds the two up", () => {
    const direct = bars(drawing, SCOPE_FILLS.direct.colour).map((bar) => at(bar, "width"));
    const bought = bars(drawing, SCOPE_FILLS.bought.colour).map((bar) => at(bar, "width"));
    const unit = (direct[0] ?? 0) / 300;
    expect(direct.map((width) => Math.round(width / unit))).toEqual([300, 300, 100, 100]);
    expect(bought.map((width) => Math.round(width / unit))).toEqual([200, 100, 150]);
  });

  it("names the basis of every bar", () => {
    const notes = texts(drawing)
      .map(({ text }) => text)
      .filter((text) => text.endsWith(" basis"));
    expect(notes).toEqual(["location basis", "market basis", "location basis", "market basis"]);
  });

  it("can be drawn where nothing is emitted", () => {
    const none = { scope2: 0, total: { value: 0 } };
    const route = { name: "Pigment", scope1: 0, location: none, market: none };
    sound(() => scopeBars({ ...DATA, routes: { dye: route, pigment: route } }));
  });

  it("is refused when a basis misses its total", () => {
    const dye = { ...DATA.routes.dye, market: { scope2: 200, total: { value: 400 } } };
    expect(() => scopeBars({ ...DATA, routes: { ...DATA.routes, dye } })).toThrow(
      "picture by scope, total of Reactive dye, steam and wash = 400",
    );
  });
});
