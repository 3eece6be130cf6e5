/**
 * Checks of factors and sources inside a pack against those that are shipped.
 */

import type { FactorSet } from "../factors/factor.js";
import { pointerPart } from "./canonical.js";
import type { Say, VerifySetting } from "./check.js";
import { factorDifferences, sourceDifferences } from "./factor-list.js";
import type { Pack } from "./schema.js";

/**
 * Checks factors: values and words of each, and the digest of the whole set.
 *
 * @param pack - the pack
 * @param setting - shipped factors and digest of this program
 * @param say - takes the check
 */
export function checkFactors(
  pack: Pack,
  setting: Pick<VerifySetting, "shipped" | "code">,
  say: Say,
): void {
  const { shipped, code } = setting;
  const differences = factorDifferences(pack.factors, shipped);
  const altered = differences.filter(({ how }) => how !== "own");
  const own = differences.filter(({ how }) => how === "own");
  // Said to be its own, and word for word the shipped one: a comparison would not replace what is not different.
  const marked = pack.factors.filter(
    ({ id, own: said }) =>
      said && shipped.factors.has(id) && !differences.some((one) => one.id === id),
  );
  const isOwn = pack.factors.some((factor) => factor.own);
  const ownWords =
    own.length === 0
      ? ""
      : `; own values for ${own.map(({ id }) => id).join(", ")}, which a comparison replaces by shipped ones`;
  if (altered.length > 0)
    say(
      "factors",
      "fail",
      `said to be shipped and are not: ${altered
        .map(({ id, how, value, shipped: mine }) =>
          how === "reworded"
            ? `${id} in words, source or scores`
            : `${id} ${value}${mine === undefined ? "" : ` instead of ${mine}`}`,
        )
        .join(", ")}${ownWords}`,
      altered.map(
        ({ id }) => `/pack/factors/${pack.factors.findIndex((factor) => factor.id === id)}`,
      ),
    );
  else if (pack.factorSet !== shipped.digest && !isOwn && pack.generator.code === code)
    say(
      "factors",
      "fail",
      "the digest of all factors is not that of the factors this program ships",
      ["/pack/factorSet"],
    );
  else if (marked.length > 0)
    say(
      "factors",
      "flag",
      `said to be own values and are the shipped ones: ${marked.map(({ id }) => id).join(", ")}${ownWords}`,
      marked.map(({ id }) => `/pack/factors/${pack.factors.findIndex((one) => one.id === id)}`),
    );
  else if (pack.factorSet !== shipped.digest)
    say(
      "factors",
      "flag",
      `${pack.factors.length} factors fit those shipped, but the digest of the whole set is another${isOwn ? ", as own values make it" : ""}${ownWords}`,
      ["/pack/factorSet"],
    );
  else
    say("factors", "pass", `${pack.factors.length} factors as this program ships them${ownWords}`);
}

/**
 * Checks sources.
 *
 * @param pack - the pack
 * @param shipped - shipped factors
 * @param say - takes the check
 */
export function checkSources(
  pack: Pick<Pack, "sources" | "factors">,
  shipped: FactorSet,
  say: Say,
): void {
  const { sources, factors } = pack;
  const cited = new Set(factors.flatMap(({ values }) => values.map(({ source }) => source)));
  const loose = Object.keys(sources).filter((key) => !cited.has(key));
  const { reworded, empty } = sourceDifferences(sources, shipped);
  const places = (keys: readonly string[]): readonly string[] =>
    keys.map((key) => `/pack/sources/${pointerPart(key)}`);
  if (reworded.length > 0)
    say(
      "sources",
      "fail",
      `sources do not read as shipped: ${reworded.join(", ")}`,
      places(reworded),
    );
  else if (loose.length > 0)
    say("sources", "fail", `sources that no factor cites: ${loose.join(", ")}`, places(loose));
  else if (empty.length > 0)
    say(
      "sources",
      "flag",
      `own sources without author or title: ${empty.join(", ")}`,
      places(empty),
    );
  else say("sources", "pass", `${Object.keys(sources).length} sources, shipped ones word for word`);
}
