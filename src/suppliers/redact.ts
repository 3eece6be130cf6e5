/**
 * The plant file as it may leave the house.
 */

import type { PlantText } from "../plant/schema.js";
import type { Pack } from "./schema.js";

/** A plant file of a pack. */
type PackedPlant = Pack["plant"];

/** Words that a mill writes for itself, and prices. They go wherever they stand. */
const PRIVATE = new Set(["words", "tariffs", "note"]);

/**
 * Takes out prices, clients, allowed wording, what-ifs, meters, the log's own headings, and words the mill wrote
 * for itself; the name of the house becomes the alias.
 *
 * @param text - the plant file
 * @param alias - name in the pack
 * @returns a copy with less
 */
export function packedPlant(text: PlantText, alias: string): PackedPlant {
  const {
    log: _log,
    meters: _meters,
    scenarios: _scenarios,
    claims: _claims,
    wording: _wording,
    clients: _clients,
    ...rest
  } = text;
  return without({ ...rest, house: alias }) as PackedPlant;
}

function without(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(without);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, item]) =>
      item === undefined || (PRIVATE.has(key) && !isNamed(item)) ? [] : [[key, without(item)]],
    ),
  );
}

// A machine or route may be called `words`; what it is stands below it as an object with a kind.
function isNamed(item: unknown): boolean {
  return (
    typeof item === "object" &&
    item !== null &&
    ("kind" in item || "machines" in item || "place" in item)
  );
}

/**
 * Finds names that must not leave the house in what is to leave it.
 *
 * @param texts - texts with the place each stands at
 * @param names - names of clients
 * @returns places and names; names of fewer than three characters are looked for as whole words
 */
export function namesWithin(
  texts: readonly (readonly [place: string, text: string])[],
  names: readonly string[],
): readonly { readonly place: string; readonly name: string }[] {
  return names
    .filter((name) => name.trim() !== "")
    .flatMap((name) => {
      const sought = name.toLowerCase();
      return texts
        .filter(([, text]) => {
          const low = text.toLowerCase();
          return sought.length < 3
            ? low.split(/[^\p{L}\p{N}]+/u).includes(sought)
            : low.includes(sought);
        })
        .map(([place]) => ({ place, name }));
    });
}

/**
 * All texts of plain data with their places.
 *
 * @param value - the data
 * @param at - place of the data
 * @returns keys and texts, each with a JSON pointer
 */
export function textsOf(value: unknown, at = ""): readonly (readonly [string, string])[] {
  if (typeof value === "string") return [[at, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => [
    ...(Array.isArray(value) ? [] : [[`${at}/${key}`, key] as const]),
    ...textsOf(item, `${at}/${key}`),
  ]);
}
