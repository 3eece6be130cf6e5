import { describe, expect, it } from "vitest";
import * as z from "zod";
import { mend } from "../../src/plant/mend.js";

const SCHEMA = z.strictObject({
  name: z.string(),
  first: z.iso.date(),
  machines: z.record(
    z.string(),
    z.strictObject({ kind: z.string(), power: z.number().optional() }),
  ),
  prices: z.strictObject({ currency: z.enum(["EUR"]), date: z.string() }).optional(),
  steps: z.array(z.strictObject({ role: z.string() })).optional(),
});

const SOUND = { name: "a", first: "2026-01-31", machines: { pad: { kind: "pad", power: 5 } } };

describe("mend", () => {
  it("leaves sound data as they are", () => {
    expect(mend(SCHEMA, SOUND)).toEqual({ value: SOUND, refused: [] });
  });

  it.each([
    ["an unknown key", { ...SOUND, nmae: 1 }, SOUND, ["nmae"]],
    [
      "a wrong value that may be absent",
      { ...SOUND, machines: { pad: { kind: "pad", power: "much" } } },
      { ...SOUND, machines: { pad: { kind: "pad" } } },
      ["machines", "pad", "power"],
    ],
    [
      "an entry that is nothing of the kind",
      { ...SOUND, machines: { pad: SOUND.machines.pad, nip: 5 } },
      SOUND,
      ["machines", "nip"],
    ],
  ])("leaves %s out", (_, faulty, rest, path) => {
    const { value, refused } = mend(SCHEMA, faulty);
    expect(value).toEqual(rest);
    expect(refused).toContainEqual(path);
  });

  it("puts something in place of what must be there, and says where", () => {
    const { value, refused } = mend(SCHEMA, {
      ...SOUND,
      machines: { pad: { power: 5 } },
      first: 1,
    });
    expect(value?.machines).toEqual({ pad: { kind: expect.any(String) as string, power: 5 } });
    expect(refused).toContainEqual(["machines", "pad", "kind"]);
    expect(refused).toContainEqual(["first"]);
    const list = mend(SCHEMA, { ...SOUND, steps: [{ role: "a" }, {}] });
    expect(list.value?.steps?.map(({ role }) => role)).toEqual(["a", "?"]);
    expect(list.refused).toContainEqual(["steps", 1, "role"]);
  });

  it("takes the thing around where nothing can stand in, once for several faults", () => {
    const { value, refused } = mend(SCHEMA, { ...SOUND, prices: { currency: "Euro", date: 3 } });
    expect(value).toEqual(SOUND);
    expect(refused).toContainEqual(["prices", "currency"]);
    expect(refused).toContainEqual(["prices"]);
  });

  it("does not touch what it was given, and gives nothing where nothing fits", () => {
    const faulty = { ...SOUND, nmae: 1 };
    mend(SCHEMA, faulty);
    expect(faulty).toEqual({ ...SOUND, nmae: 1 });
    expect(mend(SCHEMA, "text")).toEqual({ refused: [[]] });
  });
});
