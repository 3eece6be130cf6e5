/**
 * Whether both routes give cloth that serves alike: fastness, rejects and reprints by route.
 */

import { HALF_GRADES, PROPERTIES, type Property, type RouteGrades } from "../../ledger/fastness.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import type { ReportInput } from "./input.js";

/** Share of a route's lots that must be graded in every property before its fastness counts as known. */
const KNOWN = 0.5;

const PROPERTY_WORDS: Readonly<Record<Property, string>> = {
  rub_dry: "dry rub",
  rub_wet: "wet rub",
  wash: "wash",
};

type Known = Pick<ReportInput, "plant" | "fastness">;

function routesOf({ plant, fastness }: Known, workflow: Workflow): readonly RouteGrades[] {
  return (fastness ?? []).filter(({ route }) => plant.routes[route]?.workflow === workflow);
}

function isKnown({ graded, lots }: RouteGrades): boolean {
  return lots > 0 && graded >= KNOWN * lots;
}

/**
 * Whether fastness is known on both workflows.
 *
 * @param input - print house and grades by route
 * @returns true where lots took the workflow and half of those of each of its routes are graded in full
 */
export function fastnessKnown(input: Known): Readonly<Record<Workflow, boolean>> {
  const known = (workflow: Workflow): boolean => {
    const routes = routesOf(input, workflow);
    return routes.length > 0 && routes.every(isKnown);
  };
  return { pigment: known("pigment"), dye: known("dye") };
}

/**
 * Median grade, the lower of the two in the middle.
 *
 * @param counts - lots by half grade, from 1 to 5
 * @returns the grade; undefined where no lot is graded
 */
export function medianGrade(counts: readonly number[]): number | undefined {
  const all = counts.reduce((sum, count) => sum + count, 0);
  let below = 0;
  for (const [bin, count] of counts.entries()) {
    below += count;
    if (all > 0 && 2 * below >= all) return 1 + bin / 2;
  }
  return undefined;
}

// Lots of several routes by half grade.
function together(routes: readonly RouteGrades[], property: Property): readonly number[] {
  return Array.from({ length: HALF_GRADES }, (_, bin) =>
    routes.reduce((sum, { grades }) => sum + (grades[property][bin] ?? 0), 0),
  );
}

/**
 * Says whether functional equivalence is shown, for page one.
 *
 * @param input - print house and grades by route
 * @returns a sentence or two
 */
export function equivalenceSentence(input: Known): string {
  const routes = { pigment: routesOf(input, "pigment"), dye: routesOf(input, "dye") };
  const all = [...routes.pigment, ...routes.dye];
  const shut = "so functional equivalence is not shown.";
  if (!all.some(({ grades }) => PROPERTIES.some((one) => grades[one].some((count) => count > 0))))
    return `Fastness is not logged, ${shut}`;
  const unknown = all.filter((route) => !isKnown(route)).map(({ route }) => route);
  if (unknown.length > 0)
    return `Fastness is unknown for most lots of ${unknown.length > 2 ? `${unknown.length} of ${all.length} routes` : unknown.join(" and ")}, ${shut}`;
  for (const workflow of ["pigment", "dye"] as const) {
    if (routes[workflow].length === 0) return `No lot took a ${workflow} route, ${shut}`;
  }
  const medians = PROPERTIES.map((property) => ({
    words: PROPERTY_WORDS[property],
    pigment: medianGrade(together(routes.pigment, property)) ?? NaN,
    dye: medianGrade(together(routes.dye, property)) ?? NaN,
  }));
  const lower = medians.filter(({ pigment, dye }) => pigment < dye).map(({ words }) => words);
  const list = medians
    .map(({ words, pigment, dye }) => `${words} ${gradeText(pigment)} against ${gradeText(dye)}`)
    .join(", ");
  return `Median grades, pigment against dye: ${list}; ${lower.length > 0 ? `pigment is lower in ${lower.join(" and ")}, ${shut}` : "pigment is not lower in these. Hand and light fastness are not logged."}`;
}

/** Graded lots of a workflow from which a median grade is set beside another. */
const ENOUGH_GRADED = 10;

/**
 * Words for grades that are lower on the pigment routes, of the lots that were graded.
 *
 * @param input - print house and grades by route
 * @returns a clause without a full stop; empty where none is lower, or too few lots are graded to say
 */
export function lowerGrades(input: Known): string {
  const lower = PROPERTIES.flatMap((property) => {
    const counts = {
      pigment: together(routesOf(input, "pigment"), property),
      dye: together(routesOf(input, "dye"), property),
    };
    const few = Object.values(counts).some(
      (bins) => bins.reduce((sum, count) => sum + count, 0) < ENOUGH_GRADED,
    );
    const [pigment, dye] = [medianGrade(counts.pigment), medianGrade(counts.dye)];
    if (few || pigment === undefined || dye === undefined || !(pigment < dye)) return [];
    return [`${PROPERTY_WORDS[property]} ${gradeText(pigment)} (dye ${gradeText(dye)})`];
  });
  return lower.length === 0 ? "" : `fastness falls on lots graded: ${lower.join(", ")}`;
}

function gradeText(grade: number | undefined): string {
  if (grade === undefined || Number.isNaN(grade)) return "–";
  return Number.isInteger(grade) ? String(grade) : `${grade - 0.5}–${grade + 0.5}`;
}

/**
 * Fastness, rejects and reprints by route, with lots that miss what their client takes.
 *
 * @param desk - the report
 * @returns a sentence, a table and what is done with lots set apart
 */
export function equivalenceBlocks(desk: ReportDesk): readonly Block[] {
  const { input } = desk;
  const rows = (input.fastness ?? []).map((route): readonly Cell[] => {
    const share = rejectsOf(desk, route);
    const first = route.lots - route.reprints;
    return [
      textCell(route.route, true),
      numberCell(formatNumber(route.lots, 0)),
      numberCell(formatPercent(route.graded / route.lots)),
      ...PROPERTIES.map((property) => numberCell(gradeText(medianGrade(route.grades[property])))),
      numberCell(share === undefined ? "–" : formatPercent(share)),
      numberCell(first > 0 ? formatPercent(route.reprints / first) : "–"),
      numberCell(route.asked > 0 ? `${route.below} of ${route.asked}` : "–"),
      numberCell(route.asked > 0 ? formatNumber(route.belowArea / 1e4, 0) : "–"),
    ];
  });
  const head = [
    "Lots",
    "Graded in full",
    "Dry rub",
    "Wet rub",
    "Wash",
    "Rejects",
    "Reprints",
    "Below minimum",
    "Area set apart, m²",
  ];
  return [
    { kind: "paragraph", runs: [{ kind: "text", text: equivalenceSentence(input) }] },
    {
      kind: "table",
      id: "equivalence",
      caption:
        "Fastness, rejects and reprints by route, as logged. Grades are medians of the lots graded, the lower of two in the middle; rejects are a share of the printed area of production lots, reprints a share of their number.",
      head: [
        textCell("Route"),
        ...head.map((text) => ({ ...textCell(text), align: "right" as const })),
      ],
      rows,
      widths: [2.2, 0.8, 1, 0.8, 0.8, 0.8, 1, 1, 1.1, 1.2],
    },
    { kind: "paragraph", runs: [{ kind: "text", text: setApart(input) }] },
  ];
}

// Lots set apart have no accepted area either; they are not counted as rejects a second time.
function rejectsOf(desk: ReportDesk, route: RouteGrades): number | undefined {
  const places = amountPlaces();
  let [printed, accepted] = [0, 0];
  for (const { key, amounts } of desk.input.groups) {
    if (key.route !== route.route || key.kind !== "production") continue;
    printed += amounts[places.printed] ?? 0;
    accepted += amounts[places.accepted] ?? 0;
  }
  return printed > 0 ? Math.max(0, 1 - (accepted + route.belowArea / 1e4) / printed) : undefined;
}

function setApart({ fastness = [], plant }: ReportInput): string {
  if (Object.keys(plant.text.clients ?? {}).length === 0)
    return "No client's least grades stand in the plant file (clients: NAME: minimum), so no lot is set apart for its fastness and both routes are compared whatever their grades.";
  const below = fastness.reduce((sum, one) => sum + one.below, 0);
  const known = "A lot whose grade was not logged is not set apart.";
  if (below === 0) return `No lot with a logged grade misses the least its client takes. ${known}`;
  return `${formatNumber(below, 0)} ${below === 1 ? "lot misses" : "lots miss"} the least grade the client takes. They count as rejected: what they took stays in the sums of their route, their area is not accepted, and a reprint may make up for it. The route not taken is given the same. ${known}`;
}
