import type { Kit, KitRef } from "./kit.js";

/** A pattern that repeats without end. */
export interface Tile {
  /** Width and height of one tile, in its own units. */
  readonly size: readonly [number, number];
  /** From the tile's units to points on the page, counted from its lower left corner. */
  readonly matrix: readonly number[];
  /** What one tile shows. */
  readonly operators: string;
}

/**
 * Writes a pattern into the file.
 *
 * @param kit - the file
 * @param tile - what repeats
 * @returns the pattern's object
 */
export function writeTile(kit: Kit, tile: Tile): KitRef {
  const [width, height] = tile.size;
  const ref = kit.ref({
    Type: "Pattern",
    PatternType: 1,
    PaintType: 1,
    TilingType: 1,
    BBox: [0, 0, width, height],
    XStep: width,
    YStep: height,
    Matrix: [...tile.matrix],
    Resources: { ProcSet: ["PDF"] },
  });
  ref.end(tile.operators);
  return ref;
}
