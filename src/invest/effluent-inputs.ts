/**
 * What the investment file says of effluent, as inputs.
 */

import type { Input } from "./inputs.js";
import type { Making } from "./machine-inputs.js";
import type { GivenText, InvestText } from "./schema.js";
import type { Effluent } from "./study.js";

/**
 * Level, growth and strengths.
 *
 * @param text - as written
 * @param making - how inputs are made
 * @returns all but the tariffs
 */
export function effluentInputs(
  text: InvestText["effluent"],
  making: Making,
): Omit<Effluent, "tariffs"> {
  const strength = (id: string, words: string, given: GivenText): Input =>
    making.input({ id: `effluent.${id}`, words, unit: "mg/L" }, given);
  const part = (id: string, words: string, given: GivenText): Input =>
    making.input({ id: `effluent.${id}`, words, unit: "1", limits: [0, 1] }, given);
  return {
    level: levelOf(text.doubt, making),
    growth:
      text.growth === undefined
        ? undefined
        : making.input(
            {
              id: "effluent.growth",
              words: "growth of effluent charges",
              unit: "a year",
              limits: [-0.9, 10],
            },
            text.growth,
          ),
    cod:
      text.cod === "modelled" ? undefined : strength("cod", "COD of effluent as sampled", text.cod),
    codLimit:
      text.cod_limit === undefined
        ? undefined
        : strength("cod_limit", "permit limit for COD at the drain", text.cod_limit),
    solids: strength("solids", "solids of effluent as sampled", text.solids),
    settled: part("settled", "COD left after settlement", text.settled),
    bodPerCod: part("bod_per_cod", "BOD as a share of COD", text.bod_per_cod),
    solidsFollow: text.solids_follow,
  };
}

function levelOf(doubt: GivenText | undefined, making: Making): Input {
  const [id, words] = ["effluent.level", "effluent charges, times those of the tariff"];
  if (doubt === undefined) return making.held(id, words, 1);
  const { value: by, tag } = doubt;
  return making.input({ id, words, unit: "1" }, { value: 1, low: 1 - by, high: 1 + by, tag });
}
