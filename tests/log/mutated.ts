import fc from "fast-check";
import { row } from "./made.js";

const KINDS: readonly Readonly<Record<string, string>>[] = [
  {},
  {},
  {},
  { length_m: "-3" },
  { length_m: "long" },
  { length_m: "180 m" },
  { date: "2026-03-05" },
  { date: "2026-02-30" },
  { fibre: "cotton 60 polyester 40" },
  { fibre: "cotton 60 polyester 39.8" },
  { fibre: "coton" },
  { route: "pigment-calender", gsm: "151.5" },
  { rejected_m: "12.25" },
  { reprint_of: "L-0" },
  { reprint_of: "L-1", length_m: "7.7" },
  { ink_ml: "1234.5", note: "red; blue" },
  { ink_ml: "n/a" },
];

const NOT_LOTS: readonly string[] = ["Total,,,,,,900,,,,,", "L-9,2026-03-14", `${row()},surplus`];

const oneRow = fc.oneof(
  {
    weight: 12,
    arbitrary: fc
      .tuple(fc.nat(9), fc.constantFrom(...KINDS))
      .map(([name, changes]) => row({ lot: `L-${name}`, ...changes })),
  },
  { weight: 1, arbitrary: fc.constantFrom(...NOT_LOTS) },
);

/** Rows of a log with faults and repeated lots; the same in another order, and a place to cut it. */
export const mutatedRows: fc.Arbitrary<{
  readonly rows: readonly string[];
  readonly shuffled: readonly string[];
  readonly at: number;
}> = fc.array(oneRow, { minLength: 2, maxLength: 14 }).chain((rows) =>
  fc.record({
    rows: fc.constant(rows),
    shuffled: fc.shuffledSubarray(rows, { minLength: rows.length }),
    at: fc.nat(rows.length),
  }),
);
