/**
 * Judges a site of the plant file: its settings, machines, place and fuels.
 */

import type { FactorSet } from "../factors/factor.js";
import type { KeyPath } from "../factors/yaml-text.js";
import { STEP_KINDS } from "../steps/kinds.js";
import type { Complaints } from "./complaints.js";
import { MACHINE_KINDS, served } from "./machine-kinds.js";
import type { SiteText } from "./schema.js";

/**
 * Notes every fault of a site.
 *
 * @param complaints - where faults are noted
 * @param factors - factors in force
 * @param name - name of the site
 * @param site - the site as written
 */
export function judgeSite(
  complaints: Complaints,
  factors: FactorSet,
  name: string,
  site: SiteText,
): void {
  const at: KeyPath = ["sites", name];
  for (const [id, value] of Object.entries(site.settings ?? {})) {
    const factor = factors.factors.get(id);
    const path = [...at, "settings", id];
    if (factor === undefined) {
      complaints.unknown(path, id, "the id of a factor", [...factors.factors.keys()]);
    } else {
      complaints.number(path, value, factor.plausible, factor.unit);
    }
  }
  for (const [machine, text] of Object.entries(site.machines)) {
    judgeMachine(complaints, [...at, "machines", machine], text);
  }
  if (
    !factors.factors.has(`grid.${site.place}.intensity`) &&
    site.electricity?.intensity === undefined
  ) {
    complaints.say(
      [...at, "place"],
      "place-not-listed",
      site.place,
      "a place whose grid intensity is shipped, or your own figure",
      "Add `electricity: { intensity: … }` in kg CO2e per kWh; the national energy agency or the supplier's disclosure states it.",
    );
  }
  for (const arm of ["pigment", "dye"] as const) {
    const share = site.yield?.[arm];
    if (share !== undefined) complaints.number([...at, "yield", arm], share, [0, 1], "1");
  }
  judgeFuels(complaints, factors, at, site);
}

function judgeMachine(
  complaints: Complaints,
  at: KeyPath,
  machine: SiteText["machines"][string],
): void {
  const kinds = served(machine.kind).flatMap((kind) => STEP_KINDS[kind] ?? []);
  if (kinds.length === 0) {
    complaints.unknown([...at, "kind"], machine.kind, "a kind of machine", MACHINE_KINDS);
    return;
  }
  for (const [key, value] of Object.entries(machine.settings ?? {})) {
    const path = [...at, "settings", key];
    const spec = kinds.map(({ settings }) => settings[key]).find((found) => found !== undefined);
    if (spec === undefined) {
      complaints.unknown(
        path,
        key,
        `a setting of ${machine.kind}`,
        kinds.flatMap(({ settings }) => Object.keys(settings)),
      );
    } else {
      complaints.number(path, value, spec.limits, spec.unit);
    }
  }
  for (const [key, word] of Object.entries(machine.choices ?? {})) {
    const path = [...at, "choices", key];
    const spec = kinds.map(({ choices }) => choices[key]).find((found) => found !== undefined);
    if (spec === undefined) {
      complaints.unknown(
        path,
        key,
        `a choice of ${machine.kind}`,
        kinds.flatMap(({ choices }) => Object.keys(choices)),
      );
    } else if (!spec.options.includes(word)) {
      complaints.unknown(path, word, `a choice for ${key}`, spec.options);
    }
  }
}

function judgeFuels(complaints: Complaints, factors: FactorSet, at: KeyPath, site: SiteText): void {
  const withFactor = (property: string): readonly string[] => {
    const pattern = new RegExp(`^fuel\\.(.+)\\.${property}$`);
    return [...factors.factors.keys()].flatMap((id) => pattern.exec(id)?.[1] ?? []);
  };
  const fuels = withFactor("co2");
  // Flue gas of a direct burner meets the cloth: how much vapour it brings must be known.
  const gases = withFactor("vapour").filter((fuel) => fuels.includes(fuel));
  const asked = [
    ["burner", site.burner?.fuel, gases, "a fuel for direct burners"],
    ["oil_heater", site.oil_heater?.fuel, fuels, "a fuel"],
    ["boiler", site.boiler?.fuel, ["bought", ...fuels], "a fuel, or bought"],
  ] as const;
  for (const [key, fuel, known, what] of asked) {
    if (fuel !== undefined && !known.includes(fuel)) {
      complaints.unknown([...at, key, "fuel"], fuel, what, known);
    }
  }
}
