import { describe, expect, it } from "vitest";
import { keyFrom, keyOf, keyText } from "../../src/ledger/key.js";
import { lotOf } from "./made.js";

const ARMS = { pigment: "pigment-calender", dye: "reactive" };

describe("keyOf", () => {
  it("holds all that a rate or a breakdown may ask for", () => {
    const fibre = [
      { fibre: "cotton", share: 0.6 },
      { fibre: "polyester", share: 0.4 },
    ];
    expect(keyOf(lotOf({ fibre, coverage: 0.3 }), "dye", ARMS)).toEqual({
      ...{ site: "main", month: "2026-03", client: "Client Elm", fabric: "cotton poplin" },
      ...{ blend: "cotton 60 polyester 40", weight: "100-150", coverage: "25-50" },
      ...{ route: "reactive", pigment: "pigment-calender", dye: "reactive", own: "dye" },
      ...{ kind: "production", settings: "" },
    });
    expect(keyOf(lotOf(), "dye", ARMS, "2026-03-01").settings).toBe("2026-03-01");
  });

  it.each([
    [99.9, "50-100"],
    [100, "100-150"],
    [149.99, "100-150"],
    [150, "150-200"],
  ])("puts %d g/m² into the band %s", (gsm, band) => {
    expect(keyOf(lotOf({ gsm }), "dye", ARMS).weight).toBe(band);
  });

  it.each([
    [undefined, "?"],
    [0, "0-25"],
    [0.25, "25-50"],
    [0.99, "75-100"],
    [1, "75-100"],
  ])("puts a coverage of %j into the band %s", (coverage, band) => {
    expect(keyOf(lotOf({ coverage }), "dye", ARMS).coverage).toBe(band);
  });
});

describe("keyText", () => {
  it("is read back as it was, for both workflows", () => {
    for (const own of ["dye", "pigment"] as const) {
      const key = keyOf(lotOf({ client: 'Elm, "Hazel" & Söhne\n|', fabric: "" }), own, ARMS);
      expect(keyFrom(keyText(key))).toEqual(key);
    }
  });

  it("tells keys apart that differ in one field, and cannot be split by a text", () => {
    const key = keyOf(lotOf(), "dye", ARMS);
    const texts = Object.keys(key).map((field) => keyText({ ...key, [field]: "other" }));
    expect(new Set([keyText(key), ...texts]).size).toBe(Object.keys(key).length + 1);
    const odd = { ...key, client: "a\u001fb" };
    expect(keyFrom(keyText(odd))).toEqual({ ...key, client: "a b" });
  });
});
