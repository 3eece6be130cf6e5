import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { canonicalText } from "../../src/suppliers/canonical.js";
import { boundaryOf, makePack, sealed } from "../../src/suppliers/make-pack.js";
import { SealedSchema } from "../../src/suppliers/schema.js";
import { FEWEST_LOTS } from "../../src/suppliers/strata.js";
import { LOTS, lotOf, smallMill } from "../report/compose/small-mill.js";
import { packInput, packOf } from "./made.js";

const pack = packOf();

/** All keys of plain data. */
function keysIn(value: unknown): readonly string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => [
    ...(Array.isArray(value) ? [] : [key]),
    ...keysIn(item),
  ]);
}

/** All property names of a JSON Schema. */
function properties(schema: unknown): readonly string[] {
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([key, item]) => [
    ...(key === "properties" && typeof item === "object" && item !== null ? Object.keys(item) : []),
    ...properties(item),
  ]);
}

const JSON_SCHEMA = z.toJSONSchema(SealedSchema, { target: "draft-2020-12", io: "input" });

describe("a pack", () => {
  it("is the same whenever it is made, and small", () => {
    const text = sealed(pack);
    expect(sealed(packOf())).toBe(text);
    expect(canonicalText(JSON.parse(text))).toBe(text);
    expect(text.length).toBeLessThan(200_000);
  });

  it("fits the published schema, as another implementation reads it", () => {
    const ajv = new Ajv2020({ strict: false, formats: { date: /^\d{4}-\d{2}-\d{2}$/ } });
    const fits = ajv.compile(JSON_SCHEMA);
    const file = JSON.parse(sealed(pack, new Uint8Array(32).fill(1))) as Record<string, unknown>;
    expect(fits(file), JSON.stringify(fits.errors)).toBe(true);
    expect(fits({ ...file, more: 1 })).toBe(false);
    expect(fits({ ...file, pack: { ...pack, client: "x" } })).toBe(false);
    expect(fits({ ...file, pack: { ...pack, draws: "many" } })).toBe(false);
  });

  // The schema knows of no such field, so a pack that holds one is refused by who verifies it.
  it("has no field for customers, orders, prices or rows", () => {
    const never =
      /^(?:clients?|customers?|orders?|fabrics?|prices?|tariffs?|cost|currency|lot|rows?_|note|words_own)$/;
    const known = properties(JSON_SCHEMA);
    expect(known).toContain("strata");
    expect(known.filter((key) => never.test(key))).toEqual([]);
    expect(keysIn(pack).filter((key) => never.test(key))).toEqual([]);
  });

  it("shows no lot: strata of fewer than three lots are joined within cloth and route", () => {
    for (const one of pack.strata) {
      if (one.lots >= FEWEST_LOTS) continue;
      expect([one.weight, one.coverage]).toEqual(["other", "other"]);
    }
  });

  it("names no client, order, fabric or lot", () => {
    const text = sealed(pack);
    for (const { client, order, fabric, lot } of LOTS)
      for (const name of [client, order, fabric, `"${lot}"`])
        expect([name, text.includes(name)]).toEqual([name, false]);
    expect(text.includes("EUR")).toBe(false);
  });

  it("is refused where a text of the plant file names a client", () => {
    const { value, problems } = makePack(
      packInput({
        plant: smallMill({
          settings: { "boiler.efficiency": { value: 0.9, source: "audit paid by Client Birch" } },
        }),
      }),
    );
    expect(value).toBeUndefined();
    expect(problems.map(({ code, key, value: name }) => [code, key, name])).toEqual([
      ["pack-names-client", "/plant/sites/main/settings/boiler.efficiency/source", "Client Birch"],
    ]);
    expect(makePack(packInput({ alias: "Works of client aspen" })).problems[0]?.key).toBe("/alias");
  });

  it("keeps names of any client out, whatever they are", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 4, maxLength: 12, unit: "grapheme" }), (client) => {
        const name = `${client}#q`;
        const made = makePack(
          packInput({ lots: LOTS.map((lot) => ({ ...lot, client: name })), rest: { draws: 100 } }),
        );
        expect(made.problems).toEqual([]);
        expect(JSON.stringify(made.value)).not.toContain(JSON.stringify(name).slice(1, -1));
      }),
      { seed: 1, numRuns: 8 },
    );
  });

  it("takes lots that have no counterpart", () => {
    const polyester = [1, 2, 3].map((i) =>
      lotOf({ lot: `P-${i}`, fibre: [{ fibre: "polyester", share: 1 }] }),
    );
    expect(makePack(packInput({ lots: polyester.slice(1) })).problems[0]?.code).toBe(
      "pack-too-few-lots",
    );
    const only = packOf({ lots: polyester });
    expect(only.strata[0]?.dye).toBe("");
    expect(only.figures.every(({ side }) => side === "as-printed")).toBe(true);
    expect(only.claims).toEqual([]);
    expect(only.figures.find(({ indicator }) => indicator === "energy")?.median).toBeGreaterThan(0);
  });

  it("says which steps are counted", () => {
    const [route] = boundaryOf(smallMill(), ["reactive", "nothing"]);
    expect(route?.dye).toBe("reactive");
    expect(route?.steps.map(({ kind }) => kind)).toContain("wash-range");
    expect(route?.steps.every(({ partner }) => !partner)).toBe(true);
  });
});
