/**
 * Every quantity of a report once, numbered so that each comes after what it reads. Formulas that say the
 * same of the same arguments are one node, however often the routes ask for them.
 */

import type { Leaf, Quantity } from "../numbers/quantity.js";

/** A numbered quantity. */
export interface Node {
  /** The quantity. */
  readonly quantity: Quantity;
  /** Numbers of its arguments. */
  readonly reads: readonly number[];
}

/** Quantities, numbered. */
export class Nodes {
  readonly #list: Node[] = [];
  #readers: readonly (readonly number[])[] = [];
  #byKey = new Map<string, number>();
  #byObject = new Map<Quantity, number>();
  // Whether other nodes read the same maps; who adds then takes copies first.
  #isShared = false;

  /**
   * Number of a quantity; it is added with all it reads when it is new.
   *
   * Two formulas are taken for one when name, words, unit, arguments and weights are the same, so a formula must
   * say in its words all else that sets it apart.
   *
   * @param quantity - the quantity
   * @returns its number
   */
  number(quantity: Quantity): number {
    const seen = this.#byObject.get(quantity);
    if (seen !== undefined) return seen;
    const reads = quantity.kind === "leaf" ? [] : quantity.reads.map((read) => this.number(read));
    const key =
      quantity.kind === "leaf"
        ? leafKey(quantity, this.#list.length)
        : `${quantity.id}|${quantity.unit}|${quantity.words}|${reads.join(",")}|${quantity.weights?.join(",") ?? ""}`;
    let place = this.#byKey.get(key);
    this.#own();
    if (place === undefined) {
      place = this.#list.length;
      this.#list.push({ quantity, reads });
      this.#byKey.set(key, place);
    }
    this.#byObject.set(quantity, place);
    return place;
  }

  /**
   * The same quantities under the same numbers, with leaves exchanged.
   *
   * @param leafOf - the leaf to stand in place of another; it must have the same unit
   * @returns nodes of their own
   */
  with(leafOf: (leaf: Leaf) => Leaf): Nodes {
    const other = new Nodes();
    for (const { quantity, reads } of this.#list)
      other.#list.push({ quantity: quantity.kind === "leaf" ? leafOf(quantity) : quantity, reads });
    other.#byKey = this.#byKey;
    other.#byObject = this.#byObject;
    this.#isShared = true;
    other.#isShared = true;
    return other;
  }

  #own(): void {
    if (!this.#isShared) return;
    this.#byKey = new Map(this.#byKey);
    this.#byObject = new Map(this.#byObject);
    this.#isShared = false;
  }

  /**
   * All nodes, arguments before formulas.
   *
   * @returns the list; the place of a node is its number
   */
  get list(): readonly Node[] {
    return this.#list;
  }

  /**
   * All leaves with their numbers.
   *
   * @returns leaves in the order of the list
   */
  leaves(): readonly { readonly leaf: Leaf; readonly at: number }[] {
    return this.#list.flatMap(({ quantity }, at) =>
      quantity.kind === "leaf" ? [{ leaf: quantity, at }] : [],
    );
  }

  /**
   * Formulas that read some nodes, at first hand or further off.
   *
   * @param of - numbers of the nodes
   * @returns their numbers, arguments before formulas
   */
  restingOn(of: readonly number[]): readonly number[] {
    const readers = this.#readersOfAll();
    const found = new Set<number>();
    const follow = (node: number): void => {
      if (found.has(node)) return;
      found.add(node);
      readers[node]!.forEach(follow);
    };
    for (const node of of) readers[node]!.forEach(follow);
    return [...found].sort((a, b) => a - b);
  }

  // Formulas that read each node at first hand; found anew when nodes were added since.
  #readersOfAll(): readonly (readonly number[])[] {
    if (this.#readers.length === this.#list.length) return this.#readers;
    const readers: number[][] = this.#list.map(() => []);
    this.#list.forEach(({ reads }, node) => {
      for (const read of new Set(reads)) readers[read]!.push(node);
    });
    return (this.#readers = readers);
  }

  /**
   * Works every node out for one set of leaf values.
   *
   * @param leafValue - value of each leaf
   * @returns values in the order of the list
   */
  evaluate(leafValue: (leaf: Leaf, at: number) => number): Float64Array {
    const values = new Float64Array(this.#list.length);
    this.#list.forEach(({ quantity, reads }, at) => {
      values[at] =
        quantity.kind === "leaf"
          ? leafValue(quantity, at)
          : quantity.value(...reads.map((read) => values[read] ?? NaN));
    });
    return values;
  }
}

// Draws given from outside are told from others by nothing but themselves.
function leafKey({ id, spread, drawn }: Leaf, next: number): string {
  return drawn === undefined ? `${id}|${JSON.stringify(spread)}` : `${id}|drawn ${next}`;
}
