/**
 * Puts the report together from its template and its blocks.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Block, ReportDocument } from "../document.js";
import { formatDate, formatNumber } from "../format.js";
import { renderTemplate, type TemplateValues } from "../template.js";
import { allowedBlocks } from "./allowed.js";
import { audienceWords, keptFrom } from "./audience.js";
import { amountPlaces, answerLead, answerList, answerTable, tableNotes } from "./answer.js";
import { worseList } from "./worse.js";
import { findingBlocks } from "./finding.js";
import { ReportDesk } from "./desk.js";
import { distributionBlocks, meanBlocks, swingBlocks } from "./doubt.js";
import { apartList, cautionList, importBlocks } from "./evidence.js";
import { factorBlocks } from "./factor-table.js";
import { blindnessBlocks, meterBlocks, meteringSentence } from "./meters.js";
import { glossary } from "./glossary.js";
import { inputDigests } from "./digests.js";
import { airFinding } from "./air.js";
import { concentrations } from "./concentrations.js";
import { evidenceLine } from "./standing.js";
import { turningBlocks } from "./break-evens.js";
import { methodBlocks } from "./comparison-methods.js";
import { blendBlocks, pigmentRouteBlocks } from "./subsets.js";
import { equivalenceBlocks, equivalenceSentence } from "./equivalence.js";
import type { ReportInput } from "./input.js";
import { numbered } from "./numbered.js";
import { originTable, withOrigins } from "./origins.js";
import { machineChecks } from "./machine-checks.js";
import { boundaryBlocks } from "./boundary.js";
import { actualTable, breakdownBlocks } from "./groups.js";
import { breakEvenBlocks, conditions, scatterBlock } from "./overturn.js";
import { lotBlocks, monthBlocks } from "./lots.js";
import { carrierBlocks, scopeBlocks, stepBlocks } from "./quantities.js";
import { settingsSentence } from "./settings-in-force.js";
import { claimBlocks, claimsSentence } from "./claims.js";
import { costBlocks } from "./cost.js";
import { bestMeasurement, worthBlocks } from "./measurement.js";
import { scenarioBlocks } from "./scenarios.js";
import { inventory, substancesTable } from "./tables.js";

const WATER: readonly (readonly [IndicatorId, string])[] = [
  ["water", "Withdrawn"],
  ["discharged", "Discharged"],
  ["consumed", "Consumed: withdrawn less discharged"],
  ["evaporated", "Evaporated, water of inks and chemicals included"],
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
 * @param proof - takes the report without its break-evens, which are looked for last, so that what is there can
 *   be drawn meanwhile
 * @returns the document
 */
export function composeReport(
  input: ReportInput,
  template: string,
  proof?: (document: ReportDocument) => void,
): ReportDocument {
  const desk = new ReportDesk(input);
  const title = "Heat-fixed pigment beside steam-and-wash dye";
  const blocks: Record<string, readonly Block[]> = {
    answers: [answerLead(desk), answerList(desk)],
    "indicator-table": [answerTable(desk)],
    worse: [worseList(desk)],
    notes: [tableNotes(desk)],
    conditions: [small(conditions(desk))],
    evidence: [small(evidenceLine(desk))],
    best: [small(bestMeasurement(desk))],
    "water-finding": findingBlocks(desk, "water", "Water withdrawn"),
    "load-finding": findingBlocks(desk, "cod", "COD load"),
    "energy-finding": findingBlocks(desk, "energy", "Final energy"),
    "co2-finding": findingBlocks(desk, "co2-location", "CO₂e, location-based"),
    "break-even": breakEvenBlocks(desk),
    turning: [],
    scatter: [scatterBlock(desk)],
    boundary: boundaryBlocks(desk),
    apart: [apartList(desk)],
    "pigment-routes": pigmentRouteBlocks(desk),
    blends: blendBlocks(desk),
    "medians-means": meanBlocks(desk),
    methods: methodBlocks(desk),
    glossary: [glossary()],
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
      ...airFinding(desk),
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
    cost: keptFrom(desk, "Costs and prices", () => costBlocks(desk)),
    "lot-dots": lotBlocks(desk, "water", "Water withdrawn"),
    months: [
      ...monthBlocks(desk, "water", "Water withdrawn"),
      ...monthBlocks(desk, "energy", "Final energy"),
    ],
    "by-fabric": breakdownBlocks(desk, "fabric"),
    "by-client": keptFrom(desk, "Figures by client", () => breakdownBlocks(desk, "client"), [
      "public",
    ]),
    actual: [actualTable(desk)],
    distributions: distributionBlocks(desk),
    swings: [
      ...swingBlocks(desk, "water", "water withdrawn"),
      ...swingBlocks(desk, "energy", "final energy"),
      ...swingBlocks(desk, "co2-location", "CO₂e, location-based"),
    ],
    scenarios: keptFrom(desk, "What-ifs and forecasts", () => scenarioBlocks(desk)),
    equivalence: equivalenceBlocks(desk),
    claims: claimBlocks(desk),
    wording: allowedBlocks(desk),
    worth: [...blindnessBlocks(desk), ...worthBlocks(desk)],
    meters: meterBlocks(desk),
    import: importBlocks(desk),
    factors: [...factorBlocks(desk), ...machineChecks(desk)],
    origins: [originTable()],
    cautions: [cautionList(desk)],
  };
  const { logs, plant } = inputDigests(input);
  const values = valuesOf(desk, title);
  const bound = (turning: readonly Block[]): ReportDocument => ({
    title,
    author: input.plant.house,
    language: "en",
    date: input.date,
    footer: `Logs ${logs.slice(0, 12)} · plant ${plant.slice(0, 12)} · factors ${input.factors.digest.slice(0, 12)} · millrace ${input.version} · seed ${input.seed} · ${input.claims?.policy ?? "claims not assessed"} · ${input.plant.text.review === undefined ? "not reviewed" : "reviewed"}${audienceWords(input)}`,
    blocks: withOrigins(
      numbered(renderTemplate(template, "report.md", values, { ...blocks, turning })),
    ),
    figures: desk.figures.figures,
  });
  proof?.(bound([]));
  return bound(turningBlocks(desk));
}

// Page one has to fit a page.
function small(block: Block): Block {
  return block.kind === "paragraph" ? { ...block, tone: "small" } : block;
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
    equivalence: equivalenceSentence(input),
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
    grid: `Grid intensities (place code ${[...new Set(sites.map((site) => site.place))].join(", ")}) are life-cycle figures per kWh generated: fuels and building of power stations are in them. Losses between power station and mill are not, and the upstream of fuels burned on site is not either. Market-based figures rest on ${market ? `what the plant file says of the ${rungs}` : "the grid; no contract was given, so both bases are equal"}.`,
    metering: meteringSentence(input),
    draws: formatNumber(input.account.draws.count, 0),
    seed: String(input.seed),
    claims: claimsSentence(input.claims),
    review: plant.text.review ?? "none",
  };
}
