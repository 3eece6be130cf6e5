/**
 * Judges the meters of a plant file: bases of gas, machines and sites they cover, and their tree.
 */

import type { KeyPath } from "../factors/yaml-text.js";
import type { Complaints } from "./complaints.js";
import type { MeterText } from "./meter-part.js";
import type { PlantText } from "./schema.js";

/**
 * Notes what is wrong with meters. Net and gross differ by a tenth for natural gas, so neither may be taken for
 * granted; a meter must know its site and its machines, and lie under a meter of the same kind.
 *
 * @param complaints - where faults are noted
 * @param text - the file
 */
export function judgeMeters(complaints: Complaints, text: PlantText): void {
  const meters = text.meters ?? {};
  for (const [name, meter] of Object.entries(meters)) {
    const path = ["meters", name];
    judgeBasis(complaints, path, name, meter);
    judgeVolume(complaints, path, name, meter);
    judgePlace(complaints, path, meter, text);
    judgeParent(complaints, path, name, meters);
  }
}

/**
 * Site of a meter.
 *
 * @param meter - the meter
 * @param sites - names of sites
 * @returns the site it names, or the only one; undefined where it names none of several
 */
export function siteOfMeter(meter: MeterText, sites: readonly string[]): string | undefined {
  return meter.site ?? (sites.length === 1 ? sites[0] : undefined);
}

function judgeBasis(
  complaints: Complaints,
  path: KeyPath,
  name: string,
  { quantity, basis }: MeterText,
): void {
  if (complaints.refused([...path, "basis"])) return;
  if (quantity === "gas" && basis === undefined) {
    complaints.say(
      path,
      "meter-basis",
      name,
      "`basis: gross` or `basis: net` at a meter of gas, as no kWh of gas can be read without it",
      "Add it. Bills and meters count gross as a rule; the bill says so as gross, upper or higher heating value.",
    );
  }
  if (quantity !== "gas" && basis !== undefined) {
    complaints.say(
      [...path, "basis"],
      "meter-basis",
      basis,
      `no basis at a meter of ${quantity}: heating values are of fuels`,
      "Leave it out.",
    );
  }
}

// A cubic metre of gas is an amount only at a temperature and pressure, and heat only by a heating value.
function judgeVolume(
  complaints: Complaints,
  path: KeyPath,
  name: string,
  { quantity, unit, volume, heating_value }: MeterText,
): void {
  if (quantity !== "gas" || !isVolume(unit)) return;
  if (heating_value === undefined)
    complaints.say(
      path,
      "meter-heating-value",
      name,
      "`heating_value` at a meter of gas that counts cubic metres: kWh of a normal m³",
      "Add it; it stands on the bill of the month.",
    );
  if (volume === undefined && unit.trim() === "m3")
    complaints.say(
      path,
      "meter-volume",
      name,
      "`volume` at a meter of gas in m3: normal (0 °C), standard (15 °C), or { temperature, pressure }",
      "Add it. A dial turns by the gas as it passes; a corrector or a bill counts normal or standard volume.",
    );
}

/**
 * Whether a unit of gas is a volume.
 *
 * @param unit - as written
 * @returns true for cubic metres
 */
export function isVolume(unit: string): boolean {
  return /^[ns]?m[3³]$/iu.test(unit.trim());
}

function judgePlace(
  complaints: Complaints,
  path: KeyPath,
  meter: MeterText,
  text: PlantText,
): void {
  const sites = Object.keys(text.sites);
  if (meter.site !== undefined && !sites.includes(meter.site))
    complaints.unknown([...path, "site"], meter.site, "a site of the file", sites);
  const site = siteOfMeter(meter, sites);
  if (site === undefined) {
    complaints.say(
      path,
      "meter-site",
      path.join("."),
      `\`site\` at a meter of a house with several: one of ${sites.join(", ")}`,
      "Add it.",
    );
    return;
  }
  if (meter.covers === "site") return;
  const machines = Object.keys(text.sites[site]?.machines ?? {});
  meter.covers.machines.forEach((machine, i) => {
    if (!machines.includes(machine))
      complaints.unknown(
        [...path, "covers", "machines", i],
        machine,
        `a machine of site ${site}`,
        machines,
      );
  });
}

function judgeParent(
  complaints: Complaints,
  path: KeyPath,
  name: string,
  meters: Readonly<Record<string, MeterText>>,
): void {
  const meter = meters[name];
  if (meter?.within === undefined) return;
  const place = [...path, "within"];
  const parent = meters[meter.within];
  if (parent === undefined) {
    complaints.unknown(place, meter.within, "a meter of the file", Object.keys(meters));
    return;
  }
  if (parent.quantity !== meter.quantity)
    complaints.say(
      place,
      "meter-parent",
      meter.within,
      `a meter of ${meter.quantity} above a meter of ${meter.quantity}`,
      "Name the meter that counts the same before it, or leave `within` out.",
    );
  const seen = new Set([name]);
  for (let up: string | undefined = meter.within; up !== undefined; up = meters[up]?.within) {
    if (seen.has(up)) {
      complaints.say(
        place,
        "meter-parent",
        meter.within,
        "a tree of meters, in which none stands above itself",
        "Take `within` away from the topmost meter.",
      );
      return;
    }
    seen.add(up);
  }
}
