import { describe, expect, it } from "vitest";
import { PlantFile } from "../../src/plant/schema.js";
import { namesWithin, packedPlant, textsOf } from "../../src/suppliers/redact.js";

const PRICE = { currency: "EUR", date: "2026-01-01", electricity: 0.1577 };
const TEXT = PlantFile.parse({
  millrace: 1,
  house: "Weir Street Works",
  gwp: "AR6",
  log: { separator: ";" },
  sites: {
    main: {
      place: "PRT",
      words: "the old shed",
      tariffs: PRICE,
      settings: { "hall.temperature": { value: 24, source: "thermometer" } },
      machines: { words: { kind: "pad", words: "the pad of client Alder" } },
    },
  },
  routes: { tariffs: { like: "reactive", machines: { fix: "x" }, words: "for Alder" } },
  changes: [
    {
      from: "2026-05-01",
      note: "for Alder",
      sites: { main: { tariffs: PRICE, settings: { "hall.temperature": 25 } } },
    },
  ],
  scenarios: { other: { note: "what Alder asked", sites: { main: { tariffs: PRICE } } } },
  meters: { m: { quantity: "water", unit: "m3", covers: "site" } },
  clients: { Alder: { minimum: { wash: 4 } } },
  wording: { allow: [{ text: "Alder", reason: "r", proof: "p" }] },
  claims: ["less-water"],
  review: "panel of three, 2026",
});

describe("the plant file of a pack", () => {
  const packed = packedPlant(TEXT, "Supplier A");
  const written = JSON.stringify(packed);

  it("has no price, client or word of the house's own", () => {
    expect(written).not.toMatch(/0\.1577|EUR|Alder|old shed|Weir Street|scenarios|meters|wording/);
    expect(packed.house).toBe("Supplier A");
  });

  it("keeps settings, sources, changes and the review", () => {
    expect(written).toContain('"thermometer"');
    expect(packed.changes).toEqual([
      { from: "2026-05-01", sites: { main: { settings: { "hall.temperature": 25 } } } },
    ]);
    expect(packed.review).toBe("panel of three, 2026");
  });

  it("keeps machines and routes that are called like what is taken out", () => {
    expect(packed.sites["main"]?.machines["words"]).toEqual({ kind: "pad" });
    expect(packed.routes["tariffs"]).toEqual({ like: "reactive", machines: { fix: "x" } });
  });
});

describe("names within", () => {
  it("are found in any case and place, short ones as words alone", () => {
    const texts = textsOf({
      a: ["for CLIENT ALDER"],
      "Client Alder": 1,
      b: { c: "mill AB 7", d: "cabin" },
    });
    expect(namesWithin(texts, ["Client Alder", "ab", ""])).toEqual([
      { place: "/a/0", name: "Client Alder" },
      { place: "/Client Alder", name: "Client Alder" },
      { place: "/b/c", name: "ab" },
    ]);
  });
});
