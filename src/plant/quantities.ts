/**
 * Looks up settings and factors for one site and month, in the order plant file before factor, and names
 * their streams of draws.
 */

import type { FactorSet } from "../factors/factor.js";
import { valueInForce } from "../factors/in-force.js";
import { normalQuantile } from "../numbers/normal.js";
import type { Bond, Leaf } from "../numbers/quantity.js";
import { givenSpread } from "./given.js";
import type { GivenNumber } from "./schema.js";
import type { UsualRange } from "./shipped-routes.js";

/** A number asked for. */
export interface Asked {
  /** Id of the factor. */
  readonly id: string;
  /** Whose number it is, for the name of its stream; the world's when empty. */
  readonly owner: string;
  /** Value of the plant file, when there is one. */
  readonly given?: GivenNumber | undefined;
  /** Value that a shipped route sets where the trade runs a step otherwise. */
  readonly usual?: number | UsualRange | undefined;
  /** Where in the plant file. */
  readonly where?: string | undefined;
  /** What it is drawn together with. */
  readonly bond?: Bond | undefined;
}

/** Finds numbers. */
export type Lookup = (asked: Asked) => Leaf;

/** Doubt of a usual setting of a shipped route, as a share at 95 %. */
const USUAL_DOUBT = 0.08;

/**
 * Makes a lookup for one month.
 *
 * @param set - factors in force
 * @param month - month of the lots, `2026-03`
 * @param asOf - day of the report
 * @returns the lookup; the same question gives the same leaf
 */
export function lookupIn(set: FactorSet, month: string, asOf: string): Lookup {
  const found = new Map<string, Leaf>();
  return (asked) => {
    const stream = asked.owner === "" ? asked.id : `${asked.id} @ ${asked.owner}`;
    const key = `${stream}|${asked.where ?? ""}|${JSON.stringify(asked.usual ?? "")}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const leaf = makeLeaf(set, month, asOf, asked, stream);
    found.set(key, leaf);
    return leaf;
  };
}

function makeLeaf(set: FactorSet, month: string, asOf: string, asked: Asked, stream: string): Leaf {
  const factor = set.factors.get(asked.id);
  if (factor === undefined) throw new MissingFactor(asked.id, "no factor of this id is known");
  const named = {
    kind: "leaf",
    id: stream,
    factor: asked.id,
    unit: factor.unit,
    words: factor.words,
    ...(asked.bond === undefined ? {} : { bond: asked.bond }),
  } as const;
  if (asked.given !== undefined) {
    const source = typeof asked.given === "number" ? undefined : asked.given.source;
    return {
      ...named,
      spread: givenSpread(asked.given, factor.plausible),
      provenance: "plant",
      source: source ?? `plant.yaml, ${asked.where ?? asked.id}`,
    };
  }
  const inForce = valueInForce(factor, month, asOf);
  if (inForce === undefined)
    throw new MissingFactor(asked.id, `no value had been entered by ${asOf}`);
  const { spread, source } = inForce.value;
  const own = factor.overruled ? "plant" : "default";
  if (typeof asked.usual === "object") {
    const { value, low, high } = asked.usual;
    return {
      ...named,
      id: `${stream} (shipped route, ${value} ${factor.unit})`,
      common: asked.id,
      spread: {
        shape: "lognormal",
        value,
        gsd: (high / low) ** (1 / (2 * normalQuantile(0.975))),
        limits: factor.plausible,
      },
      provenance: "default",
      source: "own-estimate",
    };
  }
  if (asked.usual !== undefined) {
    return {
      ...named,
      id: `${stream} (shipped route)`,
      spread: {
        shape: "normal",
        value: asked.usual,
        sd: (USUAL_DOUBT / 2) * asked.usual,
        limits: factor.plausible,
      },
      provenance: "default",
      source: "common-practice",
    };
  }
  return asked.owner === ""
    ? { ...named, spread, provenance: own, source }
    : { ...named, common: asked.id, spread, provenance: own, source };
}

/** Thrown when a route asks for a factor that the set does not hold. */
export class MissingFactor extends Error {
  /** Shown in front of the message. */
  override readonly name = "MissingFactor";

  /** Id of the factor. */
  readonly id: string;

  /**
   * @param id - id of the factor
   * @param why - what is missing
   */
  constructor(id: string, why: string) {
    super(`${id}: ${why}`);
    this.id = id;
  }
}
