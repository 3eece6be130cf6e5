import { sha256Hex } from "../../src/numbers/digest.js";
import { SHIPPED } from "./shipped-factors.js";

/**
 * Every value of every shipped factor in one line: id, first day, day entered, value, and eight digits of the
 * digest of its spread. `node --import tsx tests/tools/list-vintages.ts` writes them to vintages.txt.
 *
 * @returns lines, sorted
 */
export function vintages(): readonly string[] {
  return [...SHIPPED.factors.values()]
    .flatMap(({ id, unit, values }) =>
      values.map(
        ({ from, entered, spread }) =>
          `${id} ${from} ${entered} ${spread.value} ${sha256Hex(`${unit} ${JSON.stringify(spread)}`).slice(0, 8)}`,
      ),
    )
    .sort();
}
