/**
 * Draws of quantities, kept by quantity.
 */

import { drawsOf, workOut } from "../account/draws.js";
import type { Program } from "../account/program.js";
import type { Derived, Quantity } from "../numbers/quantity.js";

/** Draws by quantity. */
export type Drawn = Map<Quantity, Float64Array>;

/**
 * Draws quantities of a program.
 *
 * @param drawn - takes the draws
 * @param program - the program, which comes to hold the quantities
 * @param quantities - what to draw
 * @param count - number of draws
 * @param seed - seed of the draws
 */
export function drawInto(
  drawn: Drawn,
  program: Program,
  quantities: readonly Quantity[],
  count: number,
  seed: number,
): void {
  const places = quantities.map((quantity) => {
    const all = new Float64Array(count);
    drawn.set(quantity, all);
    return { node: program.nodes.number(quantity), all };
  });
  drawsOf(program.nodes, count, seed).each(
    places.map(({ node }) => node),
    (start, end, blocks) => {
      for (const { node, all } of places) all.set(blocks[node]!.subarray(0, end - start), start);
    },
  );
}

/**
 * Works out a formula whose arguments are drawn, or rest on what is.
 *
 * @param drawn - draws, which come to hold those of the formula
 * @param quantity - the formula
 * @param count - number of draws
 * @returns its draws
 */
export function workedOut(drawn: Drawn, quantity: Derived, count: number): Float64Array {
  const known = drawn.get(quantity);
  if (known !== undefined) return known;
  const reads = quantity.reads.map((read) =>
    read.kind === "leaf" ? drawn.get(read)! : workedOut(drawn, read, count),
  );
  const all = new Float64Array(count);
  workOut(all, quantity, reads, count);
  drawn.set(quantity, all);
  return all;
}
