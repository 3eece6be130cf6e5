/**
 * The house as each option has it: a what-if of the plant file, by name or written out in the option.
 */

import type { FactorSet } from "../factors/factor.js";
import { problemAt, type TextFile, type YamlText } from "../factors/yaml-text.js";
import type { Plant } from "../plant/plant.js";
import { readPlant } from "../plant/read-plant.js";
import type { Problem } from "../problems/problem.js";
import type { OptionHouse } from "./build-study.js";
import type { InvestText } from "./schema.js";

/**
 * Reads the house of every option that changes it.
 *
 * @param yaml - the investment file, for lines
 * @param text - the same as data
 * @param plantFile - the plant file
 * @param mill - the house as it is
 * @param factors - factors in force
 * @returns houses by option, and what is wrong with them
 */
export function optionHouses(
  yaml: YamlText,
  text: InvestText,
  plantFile: TextFile,
  mill: Plant,
  factors: FactorSet,
): { readonly houses: ReadonlyMap<string, OptionHouse>; readonly problems: readonly Problem[] } {
  const houses = new Map<string, OptionHouse>();
  const problems: Problem[] = [];
  for (const [name, option] of Object.entries(text.options)) {
    if (option.scenario !== undefined) {
      const known = mill.scenarios ?? [];
      const found = known.find((scenario) => scenario.name === option.scenario);
      if (found === undefined) {
        problems.push(
          problemAt(yaml, ["options", name, "scenario"], {
            code: "unknown-name",
            value: option.scenario,
            expected: `a what-if of plant.yaml: ${known.map((one) => one.name).join(", ")}`,
            remedy: "Correct the name, or write what differs under plant.",
          }),
        );
      } else houses.set(name, found);
    }
    if (option.plant === undefined) continue;
    const asked = `option ${name}`;
    const { value, problems: faults } = readPlant(plantFile, factors, {
      name: asked,
      says: option.plant,
    });
    const house = value?.scenarios?.find((scenario) => scenario.name === asked);
    if (house !== undefined) houses.set(name, house);
    problems.push(
      ...faults.map(({ key = "", ...fault }): Problem => {
        const place = `options.${name}.plant`;
        const inside = key.replace(`scenarios.${asked}`, "");
        return {
          ...fault,
          file: yaml.name,
          line: yaml.lineOf(["options", name, "plant"]),
          key: `${place}${inside}`,
        };
      }),
    );
  }
  return { houses, problems: [...problems, ...unknownRoutes(yaml, text, mill, houses)] };
}

function unknownRoutes(
  yaml: YamlText,
  text: InvestText,
  mill: Plant,
  houses: ReadonlyMap<string, OptionHouse>,
): readonly Problem[] {
  return Object.entries(text.options).flatMap(([name, { to }]): readonly Problem[] => {
    if (to === undefined) return [];
    const { routes } = houses.get(name)?.plant ?? mill;
    const route = Object.hasOwn(routes, to) ? routes[to] : undefined;
    if (route?.workflow === "pigment") return [];
    const known = Object.values(routes).filter(({ workflow }) => workflow === "pigment");
    return [
      {
        code: "unknown-name",
        severity: "refused",
        file: yaml.name,
        line: yaml.lineOf(["options", name, "to"]),
        key: `options.${name}.to`,
        value: to,
        expected: `a pigment route: ${known.map((one) => one.name).join(", ")}`,
        remedy: "Correct the name, or bring the route along under plant.routes of the option.",
      },
    ];
  });
}
