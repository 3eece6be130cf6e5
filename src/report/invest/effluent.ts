/**
 * The effluent charge worked, before and after; and carbon.
 */

import { DECIMALS, type Money, sumOf, toCent } from "../../invest/arithmetic.js";
import { costOf } from "../../invest/cost.js";
import { type EffluentYear, effluentYears } from "../../invest/effluent.js";
import type { StudyOption } from "../../invest/study.js";
import { exactWorld } from "../../invest/world.js";
import type { Block, Cell } from "../document.js";
import { formatNumber } from "../format.js";
import { type InvestDesk, inputValue, money, paragraph, right, span, table } from "./desk.js";
import { costWords } from "./option-table.js";

/** Forms of tariffs in words. */
const FORMS = {
  volume: "by volume alone",
  mogden: "by volume and strength, against standard sewage",
  excess: "by volume, and by strength above what goes free",
} as const;

/**
 * The charge of the first year of each tariff in force, once all have moved, part by part.
 *
 * @param desk - the report
 * @returns a sentence and a table for each tariff
 */
export function effluentBlocks(desk: InvestDesk): readonly Block[] {
  const { study, project } = desk.found;
  const { life } = project.option.text;
  const world = exactWorld();
  const years = (option: StudyOption): readonly EffluentYear<Money>[] =>
    effluentYears(study, life, world, costOf(study, option, life, world).quantities);
  const [now, then] = [years(study.carryOn), years(project.option)];
  const seen = new Set<string>();
  const { year: full } = project.measures.steady;
  const tables = now.flatMap((before, i): readonly Block[] => {
    const after = then[i];
    const year = i + 1;
    const { from } = before.tariff;
    const next = now[i + 1]?.tariff.from;
    // A tariff is shown in its first year with all lots moved, or in its last before.
    if (after === undefined || seen.has(from) || (year < full && next === from)) return [];
    seen.add(from);
    return [worked(desk, year, before, after)];
  });
  const { effluent } = study;
  return [
    paragraph([
      `${effluent.cod === undefined ? "COD of effluent is as modelled" : `COD of effluent today is ${inputValue(effluent.cod, effluent.cod.central)} (${effluent.cod.tag})`}, solids ${inputValue(effluent.solids, effluent.solids.central)} (${effluent.solids.tag}); the model of the hall says how COD moves when lots move, and the load of solids is taken to follow ${effluent.solidsFollow === "cod" ? "that of COD" : "the volume"}. Strengths after the change are not measured: sample them during the trial. Less water makes effluent stronger, and a limit on concentration can be passed although the load falls.`,
    ]),
    ...limitBlocks(desk),
    ...tables,
  ];
}

// COD at the drain against the permit, or what is missing to say so.
function limitBlocks(desk: InvestDesk): readonly Block[] {
  const { study, project, strengths } = desk.found;
  const { codLimit } = study.effluent;
  const rows = strengths.map(({ name, central, cod, above }) => [
    name,
    right(formatNumber(central, 0)),
    right(span(cod.low, cod.high)),
    ...(above === undefined ? [] : [right(desk.chance(above.count, above.of))]),
  ]);
  return [
    paragraph([
      codLimit === undefined
        ? `Permit limit for COD: not given. Look it up in the permit and put it under effluent.cod_limit in mg/L; it changes no money here, but says how often ${project.option.name} would let go more than is allowed, and so whether a basin, a treatment or a new permit belongs among its capital. Until then the strengths below are all there is to hold against it.`
        : `Permit limit for COD: ${inputValue(codLimit, codLimit.central)} (${codLimit.tag}). The share of draws above it stands beside each option; a limit passed asks for treatment or another permit, which is not in its capital unless a line says so.`,
    ]),
    table(
      "cod-limit",
      `COD at the drain in year ${project.option.text.life}, or the last year of an option that lives shorter, mg/L.`,
      [
        "Option",
        "COD",
        "10 to 90 % of draws",
        ...(codLimit === undefined ? [] : ["Draws above the limit"]),
      ],
      rows,
    ),
  ];
}

function worked(
  desk: InvestDesk,
  year: number,
  before: EffluentYear<Money>,
  after: EffluentYear<Money>,
): Block {
  const { study, project } = desk.found;
  const { form } = before.tariff.tariff;
  const strength = (
    words: string,
    of: keyof EffluentYear<Money>["strength"],
  ): readonly (Cell | string)[] => [
    `${words}, mg/L`,
    "",
    right(before.strength[of].toFixed(0)),
    "",
    right(after.strength[of].toFixed(0)),
  ];
  const rows: (readonly (Cell | string)[])[] = [
    ["volume, m³", "", right(before.volume.toFixed(1)), "", right(after.volume.toFixed(1))],
    ...(form === "volume"
      ? []
      : [
          strength("COD, settled (Ot)", "settled"),
          strength("solids (St)", "solids"),
          ...(form === "excess" ? [strength("BOD", "bod")] : []),
        ]),
    ...before.parts.map((part, i) => {
      const other = after.parts[i];
      return [
        part.part,
        right(part.per?.toFixed(4) ?? "–"),
        right(toCent(part.money).toFixed(2)),
        right(other?.per?.toFixed(4) ?? "–"),
        right(other === undefined ? "" : toCent(other.money).toFixed(2)),
      ];
    }),
  ];
  const sum = ({ parts }: EffluentYear<Money>): Cell => ({
    ...right(
      toCent(
        sumOf(
          DECIMALS,
          parts.map((part) => part.money),
        ),
      ).toFixed(2),
    ),
    strong: true,
  });
  rows.push(["charge", "", sum(before), "", sum(after)]);
  return table(
    `effluent-${before.tariff.from}`,
    `Charge of year ${year} by the tariff of ${before.tariff.from} (${FORMS[form]}; ${before.tariff.tag}${before.tariff.source === "" ? "" : `, ${before.tariff.source}`}), ${desk.currency}, reckoned in decimals at central values.`,
    ["Part", "Rate per m³", study.carryOn.name, "Rate per m³", project.option.name],
    rows,
    { widths: [2, 1, 1.2, 1, 1.2] },
  );
}

/**
 * Carbon of all options.
 *
 * @param desk - the report
 * @returns a sentence and the table
 */
export function carbonBlocks(desk: InvestDesk): readonly Block[] {
  const { options, study } = desk.found;
  const price = study.prices.get("carbon");
  const rate = study.discount.central;
  return [
    paragraph([
      price === undefined
        ? "No carbon price is paid, so none is counted; a value that a government sets for its own appraisals is not a price. "
        : `Carbon is counted at ${inputValue(price.price, price.price.central)} (${price.price.tag}) on what the mill burns, where it is really paid. `,
      "Tonnes are partial, gate to gate: scopes 1 and 2 by location, and what a partner house causes. Beside each cost stands the share of draws in which the option brings money and takes less of it, of CO₂e or of water. One that does has no cost per tonne, and options are never ranked by it: more tonnes would make a saver look worse.",
    ]),
    table(
      "carbon",
      `CO₂e less than with ${study.carryOn.name} over the life of each option, and what it costs: −NPV over tonnes, ${desk.currency}/t; and over m³ of water.`,
      [
        "Option",
        "t less",
        "10 to 90 %",
        "per t",
        "per t, tonnes discounted",
        "m³ water less",
        "per m³",
      ],
      options.map(({ option, measures, drawn }) => {
        const discounted = measures.gain.tonnesLess.reduce(
          (sum, t, year) => sum + t / (1 + rate) ** year,
          0,
        );
        const each = discounted > 0 ? -measures.gain.worth / discounted : undefined;
        return [
          option.name,
          right(formatNumber(measures.tonnes, 0)),
          right(span(drawn.tonnes.low, drawn.tonnes.high)),
          right(costWords(desk, measures.perTonne, drawn.saves)),
          right(costWords(desk, each, drawn.saves)),
          right(money(measures.water)),
          right(costWords(desk, measures.perCubicMetre, drawn.above)),
        ];
      }),
      { widths: [1.6, 0.8, 1.2, 1.1, 1.2, 1, 1.1] },
    ),
  ];
}
