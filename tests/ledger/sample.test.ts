import { describe, expect, it } from "vitest";
import { Sample, SAMPLE_SIZE, type SampledLot } from "../../src/ledger/sample.js";
import { hash64 } from "../../src/numbers/digest.js";

function entry(lot: string, hash = hash64(lot)[0]): SampledLot {
  return { hash, lot, key: "k", amounts: [1] };
}

function sampled(lots: readonly SampledLot[]): readonly SampledLot[] {
  const sample = new Sample();
  for (const lot of lots) sample.offer(lot.hash, () => lot);
  return sample.lots();
}

const MANY = Array.from({ length: 3 * SAMPLE_SIZE }, (_, i) => entry(`L-${i}`));

describe("Sample", () => {
  it("keeps every lot while there are few, sorted by hash", () => {
    const lots = MANY.slice(0, 50);
    expect(sampled(lots)).toEqual(lots.toSorted((a, b) => a.hash - b.hash));
  });

  it("keeps the lots with the smallest hashes, in whatever order they come", () => {
    const smallest = MANY.toSorted((a, b) => a.hash - b.hash).slice(0, SAMPLE_SIZE);
    expect(sampled(MANY)).toEqual(smallest);
    expect(sampled(MANY.toReversed())).toEqual(smallest);
    expect(sampled(smallest.toReversed().concat(MANY.slice(0, 10)).slice(0, SAMPLE_SIZE))).toEqual(
      smallest,
    );
    expect(sampled(MANY.toSorted((a, b) => b.hash - a.hash))).toEqual(smallest);
  });

  it("is the sample of samples, so that parts may be merged", () => {
    const parts = [MANY.slice(0, 2500), MANY.slice(2500, 2600), MANY.slice(2600)];
    expect(sampled(parts.toReversed().flatMap((part) => sampled(part)))).toEqual(sampled(MANY));
  });

  it("decides between equal hashes by the name", () => {
    const equal = Array.from({ length: SAMPLE_SIZE + 5 }, (_, i) => entry(`L-${10_000 + i}`, 7));
    const names = equal.slice(0, SAMPLE_SIZE).map(({ lot }) => lot);
    expect(sampled(equal).map(({ lot }) => lot)).toEqual(names);
    expect(sampled(equal.toReversed()).map(({ lot }) => lot)).toEqual(names);
  });

  it("does not make an entry that cannot be kept", () => {
    const sample = new Sample();
    for (let i = 0; i < 2 * SAMPLE_SIZE; i++) sample.offer(i, () => entry(`L-${i}`, i));
    let made = 0;
    sample.offer(SAMPLE_SIZE, () => {
      made += 1;
      return entry("late", SAMPLE_SIZE);
    });
    expect(made).toBe(0);
  });

  it("hands out a list that later lots do not change", () => {
    const sample = new Sample();
    sample.offer(2, () => entry("L-2", 2));
    const before = sample.lots();
    sample.offer(1, () => entry("L-1", 1));
    expect(before.map(({ lot }) => lot)).toEqual(["L-2"]);
    expect(sample.lots().map(({ lot }) => lot)).toEqual(["L-1", "L-2"]);
  });
});
