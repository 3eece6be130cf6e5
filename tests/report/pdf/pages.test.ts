import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { paginate } from "../../../src/report/pdf/pages.js";
import type { Slice } from "../../../src/report/pdf/slices.js";

function slice(height: number, rest: Partial<Slice> = {}): Slice {
  return { height, draw: () => undefined, ...rest };
}

function heights(slices: readonly Slice[], height: number): readonly (readonly number[])[] {
  return paginate(slices, height).map((page) => page.map((placed) => placed.slice.height));
}

describe("paginate", () => {
  it("gives one empty page for an empty report", () => {
    expect(paginate([], 100)).toEqual([[]]);
  });

  it("turns the page when the next slice does not fit", () => {
    expect(heights([slice(60), slice(40), slice(1)], 100)).toEqual([[60, 40], [1]]);
  });

  it("keeps tied slices together", () => {
    expect(heights([slice(60), slice(20, { tied: true }), slice(30)], 100)).toEqual([
      [60],
      [20, 30],
    ]);
  });

  it("parts a chain no page can hold, but leaves no heading alone", () => {
    const chain = [slice(20, { tied: true }), slice(50, { tied: true }), slice(60)];
    expect(heights([slice(70), ...chain], 100)).toEqual([[70], [20, 50], [60]]);
  });

  it("drops the white above at the top of a page and takes the greater of two whites", () => {
    const pages = paginate([slice(10, { before: 9, after: 4 }), slice(10, { before: 7 })], 100);
    expect(pages[0]?.map(({ top }) => top)).toEqual([0, 17]);
  });

  it("opens a page where a slice asks for one, even within a chain", () => {
    expect(heights([slice(10, { tied: true }), slice(10, { newPage: true })], 100)).toEqual([
      [10],
      [10],
    ]);
    expect(heights([slice(10, { newPage: true })], 100)).toEqual([[10]]);
  });

  it("puts the head on top of each further page, and makes room for it", () => {
    const head = { height: 15, draw: () => undefined };
    const rows = Array.from({ length: 5 }, () => slice(40, { head }));
    const pages = paginate([slice(10), ...rows], 100);
    expect(pages.map((page) => page.map(({ headed }) => headed))).toEqual([
      [false, false, false],
      [true, false],
      [true],
    ]);
    expect(pages[1]?.map(({ top }) => top)).toEqual([15, 55]);
  });

  it("leaves out a head that would push its slice off the page", () => {
    const pages = paginate(
      [slice(90), slice(90, { head: { height: 20, draw: () => undefined } })],
      100,
    );
    expect(pages[1]).toMatchObject([{ top: 0, headed: false }]);
  });

  it("ends pages where the least is parted and the least is left white", () => {
    const dealt = (parting: number): readonly (readonly number[])[] =>
      heights([slice(50), slice(10, { parting }), slice(90), slice(50)], 100);
    expect(dealt(0)).toEqual([[50, 10], [90], [50]]);
    expect(dealt(30)).toEqual([[50], [10, 90], [50]]);
  });

  it("leaves no line alone on the last page where it can be kept with others", () => {
    const rows = Array.from({ length: 21 }, () => slice(5));
    expect(heights(rows, 100).map((page) => page.length)).toEqual([19, 2]);
  });

  it("keeps every slice, in order, within the page", () => {
    const any = fc.record({
      height: fc.integer({ min: 0, max: 100 }),
      before: fc.integer({ min: 0, max: 30 }),
      after: fc.integer({ min: 0, max: 30 }),
      tied: fc.boolean(),
      head: fc.constantFrom(undefined, { height: 20, draw: () => undefined }),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 60 }), (records) => {
        const slices = records.map(({ head, ...rest }) =>
          slice(rest.height, { ...rest, ...(head ? { head } : {}) }),
        );
        const pages = paginate(slices, 100);
        expect(pages.flat().map((placed) => placed.slice)).toEqual(slices);
        for (const page of pages) {
          let bottom = 0;
          for (const {
            slice: { height },
            top,
          } of page) {
            expect(top).toBeGreaterThanOrEqual(bottom);
            bottom = top + height;
            expect(bottom).toBeLessThanOrEqual(100);
          }
        }
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
