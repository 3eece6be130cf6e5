/**
 * Puts the report together from its template and its blocks.
 */

import type { IndicatorId } from "../../account/indicators.js";
import { sha256Hex } from "../../numbers/digest.js";
import type { Block, ReportDocument } from "../document.js";
import { formatDate, formatNumber } from "../format.js";
import { renderTemplate, type TemplateValues } from "../template.js";
import { amountPlaces, answerList, answerTable, worseList } from "./answer.js";
import { basisBlock, findingBlocks } from "./finding.js";
import { ReportDesk } from "./desk.js";
import { distributionBlocks, meterBlocks, swingBlocks } from "./doubt.js";
import { apartList, cautionList, factorBlocks, importBlocks } from "./evidence.js";
import type { ReportInput } from "./input.js";
import { machineChecks } from "./machine-checks.js";
import { boundaryBlocks } from "./boundary.js";
import { actualTable, breakdownTable } from "./groups.js";
import { breakEvenBlocks, conditions, scatterBlock } from "./overturn.js";
import { lotBlocks, monthBlocks } from "./lots.js";
import { carrierBlocks, scopeBlocks, stepBlocks } from "./quantities.js";
import { settingsSentence } from "./settings-in-force.js";
import { claimBlocks, claimsSentence } from "./claims.js";
import { costBlocks } from "./cost.js";
import { bestMeasurement, worthBlocks } from "./measurement.js";
import { concentrations, inventory, substancesTable } from "./tables.js";

const WATER: readonly (readonly [IndicatorId, string])[] = [
  ["water", "Withdrawn"],
  ["discharged", "Discharged"],
  ["evaporated", "Evaporated"],
];

const LOADS: readonly (readonly [IndicatorId, string])[] = [
  ["cod", "COD"],
  ["nitrogen", "Nitrogen"],
  ["salt", "Dissolved salts"],
];

/**
 * Makes the report.
 *
 * @param input - what it is made of
 * @param template - text of the template
 * @returns the document
 */
export function composeReport(input: ReportInput, template: string): ReportDocument {
  const desk = new ReportDesk(input);
  const title = "Heat-fixed pigment beside steam-and-wash dye";
  // Page one is noted first, so that figures are numbered as they are read.
  const blocks: Record<string, readonly Block[]> = {
    answers: [answerList(desk)],
    "indicator-table": [answerTable(desk)],
    strip: [
      {
        kind: "strip",
        words: "Final energy of both routes: where the numbers come from",
        shares: desk.provenance("energy"),
      },
    ],
    worse: [worseList(desk)],
    basis: [basisBlock(desk)],
    conditions: [conditions(desk)],
    best: [bestMeasurement(desk)],
    "water-finding": findingBlocks(desk, "water", "Water withdrawn"),
    "load-finding": findingBlocks(desk, "cod", "COD load"),
    "energy-finding": findingBlocks(desk, "energy", "Final energy"),
    "co2-finding": findingBlocks(desk, "co2-location", "CO₂e, location-based"),
    "break-even": breakEvenBlocks(desk),
    scatter: [scatterBlock(desk)],
    boundary: boundaryBlocks(desk),
    apart: [apartList(desk)],
    "water-steps": stepBlocks(desk, "water", "Water withdrawn"),
    "water-inventory": [
      inventory(
        desk,
        "water-inventory",
        `Water inventory per ${input.reference.words}, medians with 95 % intervals.`,
        WATER,
      ),
    ],
    "load-inventory": [
      inventory(
        desk,
        "load-inventory",
        `Loads to the drain per ${input.reference.words}, before treatment, medians with 95 % intervals.`,
        LOADS,
      ),
    ],
    "load-steps": stepBlocks(desk, "cod", "COD load"),
    concentrations: [concentrations(desk)],
    "energy-carriers": carrierBlocks(desk),
    "energy-steps": stepBlocks(desk, "energy", "Final energy"),
    "co2-scopes": scopeBlocks(desk),
    "air-inventory": [
      inventory(
        desk,
        "air-inventory",
        `Organic carbon and formaldehyde to air per ${input.reference.words}, medians with 95 % intervals. Both rest on estimates of recipes; measure the exhaust before relying on them.`,
        [
          ["carbon-to-air", "Organic carbon"],
          ["formaldehyde", "Formaldehyde"],
        ],
      ),
    ],
    elsewhere: [
      inventory(
        desk,
        "elsewhere",
        `Made elsewhere and used per ${input.reference.words}, and machine time, medians with 95 % intervals.`,
        [
          ["ink", "Ink"],
          ["paper", "Protecting paper"],
          ["hours", "Machine time"],
          ["labour", "Labour time"],
        ],
      ),
      substancesTable(desk),
    ],
    cost: costBlocks(desk),
    "lot-dots": lotBlocks(desk, "water", "Water withdrawn"),
    months: [
      ...monthBlocks(desk, "water", "Water withdrawn"),
      ...monthBlocks(desk, "energy", "Final energy"),
    ],
    "by-fabric": [breakdownTable(desk, "fabric")],
    "by-client": [breakdownTable(desk, "client")],
    actual: [actualTable(desk)],
    distributions: distributionBlocks(desk),
    swings: [
      ...swingBlocks(desk, "water", "water withdrawn"),
      ...swingBlocks(desk, "energy", "final energy"),
      ...swingBlocks(desk, "co2-location", "CO₂e, location-based"),
    ],
    claims: claimBlocks(desk),
    worth: worthBlocks(desk),
    meters: meterBlocks(desk),
    import: importBlocks(desk),
    factors: [...factorBlocks(desk), ...machineChecks(desk)],
    cautions: [cautionList(desk)],
  };
  const body = renderTemplate(template, "report.md", valuesOf(desk, title), blocks);
  const logs = sha256Hex(
    input.log.files
      .map((file) => file.sha256)
      .sort()
      .join("\n"),
  );
  const plant = sha256Hex(JSON.stringify(input.plant.text));
  return {
    title,
    author: input.plant.house,
    language: "en",
    date: input.date,
    footer: `Logs ${logs.slice(0, 12)} · plant ${plant.slice(0, 12)} · factors ${input.factors.digest.slice(0, 12)} · millrace ${input.version} · seed ${input.seed} · ${input.claims?.policy ?? "claims not assessed"} · ${input.plant.text.review === undefined ? "not reviewed" : "reviewed"}`,
    blocks: body,
    figures: desk.figures.figures,
  };
}

function siteWords(input: ReportInput): string {
  const sites = [...new Set(input.groups.map(({ key }) => key.site))].sort();
  return `, ${sites.length === 1 ? "site" : "sites"} ${sites.join(", ")}`;
}

function valuesOf(desk: ReportDesk, title: string): TemplateValues {
  const { input } = desk;
  const places = amountPlaces();
  const total = (place: number): number =>
    input.groups.reduce((sum, { amounts }) => sum + (amounts[place] ?? 0), 0);
  const { scope, plant } = input;
  const parts = [
    scope.client === "" ? "" : `client ${scope.client}`,
    scope.site === "" ? "" : `site ${scope.site}`,
    scope.order === "" ? "" : `order ${scope.order}`,
  ].filter((part) => part !== "");
  const sites = Object.values(plant.sites);
  const market = sites.some((site) => site.electricity?.market !== undefined);
  const rungs = sites.map((site) => site.electricity?.market?.rung ?? "grid").join(", ");
  return {
    title,
    house: plant.house,
    scope: parts.length === 0 ? "" : `, ${parts.join(", ")} only`,
    lots: formatNumber(total(places.lots), 0),
    accepted: formatNumber(total(places.accepted), 0),
    sites: scope.site === "" ? siteWords(input) : "",
    from: formatDate(input.days[0]),
    to: formatDate(input.days[1]),
    fastness: (input.log.filled.get("rub_wet") ?? 0) > 0,
    counterpart: [
      "Cellulosics are set beside reactive dye, silk, wool and polyamide beside acid dye, polyester beside disperse dye; the pigment route of a dye lot is the calender, unless the plant file says otherwise. A fibre without counterpart is left out and counted below.",
      settingsSentence(input),
    ]
      .filter((sentence) => sentence !== "")
      .join(" "),
    gwp:
      plant.gwp === "AR6"
        ? "the sixth assessment report (AR6)"
        : "the fifth assessment report (AR5)",
    grid: `Grid intensities of ${sites.map((site) => site.place).join(", ")} are life-cycle figures per kWh generated: what happens before the power station is in them, and losses of the grid are not, so electricity bought counts for a little less than it is. Market-based figures rest on: ${rungs}${market ? "" : "; no contract was given, so both bases are equal"}.`,
    draws: formatNumber(input.account.draws.count, 0),
    seed: String(input.seed),
    claims: claimsSentence(input.claims),
    review: plant.text.review ?? "none",
  };
}
