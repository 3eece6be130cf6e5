/**
 * What-ifs beside the mill: what each saves, how far that is from the mill, and what it changes.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Comparison, Range } from "../../compare/compare.js";
import type { PlayedScenario, Scenarios } from "../../compare/scenarios.js";
import type { Block, Cell, Run } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatInterval, formatNumber } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { printUnit } from "./names.js";

const COLUMNS: readonly (readonly [IndicatorId, string])[] = [
  ["water", "Water"],
  ["cod", "COD load"],
  ["energy", "Final energy"],
  ["co2-location", "CO₂e location"],
  ["cost", "Cost"],
];

/** What a cell says where the dye route takes next to nothing, so that no share can be saved. */
const NO_SHARE = "–";

/**
 * What-ifs side by side.
 *
 * @param desk - the report
 * @returns how to read them, savings, changes against the mill, amounts on both routes, and what differs
 */
export function scenarioBlocks(desk: ReportDesk): readonly Block[] {
  const { scenarios } = desk.input;
  if (scenarios === undefined) {
    return [
      paragraph(
        "No what-if was asked for. Name some under scenarios in plant.yaml, or try one with --set KEY=VALUE.",
      ),
    ];
  }
  const { base, played, draws } = scenarios;
  const columns = COLUMNS.filter(([id]) => base.has(id));
  const asked = played.filter(({ scenario }) => scenario.asked);
  return [
    paragraph(
      `A scenario is the plant file with the changes listed below, on the same lots; it is a what-if, not the mill. All of them, and the mill beside them, were worked out on the same ${formatNumber(draws, 0)} draws of this report's seed, so that the doubt they share cancels in the change. ${draws < desk.input.account.draws.count ? "These are fewer draws than elsewhere in the report, so the mill's own row may differ from page one in its last digit. " : ""}What a scenario would cost to bring about is not counted.`,
    ),
    ...asked.map(({ scenario }): Block => ({
      kind: "box",
      title: "Not the mill",
      tone: "caution",
      blocks: [
        paragraph(
          `${scenario.name} was set on the command line. It is a what-if and says nothing of the mill as it is.`,
        ),
      ],
    })),
    savings(desk, scenarios, columns),
    changes(desk, played, columns),
    differences(desk, played),
    amounts(desk, scenarios, columns),
  ];
}

function savings(desk: ReportDesk, { base, played }: Scenarios, columns: typeof COLUMNS): Block {
  const row = (name: string, at: string, all: ReadonlyMap<IndicatorId, Comparison>): Cell[] => [
    textCell(name, true),
    ...columns.map(([id]) => {
      const saving = all.get(id)?.saving;
      return saving === undefined
        ? numberCell(NO_SHARE)
        : percentCell(desk, `scenario.${at}.${id}.saving`, saving, "%", 0);
    }),
  ];
  return table(
    "scenario-savings",
    "Share saved by pigment under each scenario, percent, medians with 95 % intervals.",
    columns,
    [
      row("The mill", "mill", base),
      ...played.map(({ scenario, comparisons }, i) =>
        row(scenario.name, String(i + 1), comparisons),
      ),
    ],
  );
}

function changes(
  desk: ReportDesk,
  played: readonly PlayedScenario[],
  columns: typeof COLUMNS,
): Block {
  return table(
    "scenario-changes",
    "Change of the share saved against the mill, percentage points, paired draw by draw: medians with 95 % intervals. Below zero, pigment saves less than at the mill.",
    columns,
    played.map(({ scenario, changes: found }, i) => [
      textCell(scenario.name, true),
      ...columns.map(([id]) => {
        const change = found.get(id);
        if (change === undefined) return numberCell(NO_SHARE);
        if (change.low === 0 && change.high === 0) return numberCell("none");
        return percentCell(desk, `scenario.${i + 1}.${id}.change`, change, "points");
      }),
    ]),
  );
}

function amounts(desk: ReportDesk, { base, played }: Scenarios, columns: typeof COLUMNS): Block {
  const { suffix, words } = desk.input.reference;
  const cells = (all: ReadonlyMap<IndicatorId, Comparison>): Cell[] =>
    columns.flatMap(([id]) => {
      const comparison = all.get(id);
      const { scale } = printUnit(id, comparison?.unit ?? "", suffix);
      return (["pigment", "dye"] as const).map((arm) => {
        const { median = NaN, low = NaN, high = NaN } = comparison?.[arm] ?? {};
        const [m, l, h] = [median * scale, low * scale, high * scale];
        return numberCell(
          comparison === undefined ? NO_SHARE : formatNumber(m, digitsFor(m, l, h)),
        );
      });
    });
  const units = columns.map(
    ([id, name]) => [name, printUnit(id, base.get(id)?.unit ?? "", suffix).unit] as const,
  );
  return {
    kind: "table",
    id: "scenario-amounts",
    caption: `Both routes under each scenario per ${words}, medians (P pigment, D dye): ${units.map(([name, unit]) => `${name.toLowerCase().replace("cod", "COD").replace("co₂e", "CO₂e")} in ${unit}`).join(", ")}.`,
    behind: true,
    head: [
      textCell("Scenario"),
      ...units.flatMap(([name]) =>
        [`${name}, P`, "D"].map((text) => ({ ...textCell(text), align: "right" as const })),
      ),
    ],
    rows: [
      [textCell("The mill", true), ...cells(base)],
      ...played.map(({ scenario, comparisons }) => [
        textCell(scenario.name, true),
        ...cells(comparisons),
      ]),
    ],
    widths: [3, ...columns.flatMap(() => [1, 1])],
  };
}

// What each scenario changes, in the words of the mill first.
function differences(desk: ReportDesk, played: readonly PlayedScenario[]): Block {
  const idle = desk.input.reference.per !== "m2";
  return {
    kind: "list",
    ordered: false,
    items: played.map(({ scenario }): readonly Run[] => {
      const { note, differs, rejects } = scenario;
      const said = [
        ...(note === "" ? [] : [note]),
        differs.length === 0 ? "nothing differs" : differs.join("; "),
        ...(idle && (rejects.pigment !== 1 || rejects.dye !== 1)
          ? ["rejects act per accepted m² only, so not in this report"]
          : []),
      ];
      return [
        { kind: "text", text: `${scenario.name}: `, style: "bold" },
        { kind: "text", text: `${said.join(". ")}.` },
      ];
    }),
  };
}

function percentCell(
  desk: ReportDesk,
  figure: string,
  range: Range,
  unit: string,
  digits?: number,
): Cell {
  const percent = { median: 100 * range.median, low: 100 * range.low, high: 100 * range.high };
  const places = digits ?? (Math.abs(percent.median) < 1 ? 1 : 0);
  const { run } = desk.figures.range(figure, percent, unit, { digits: places });
  const interval = formatInterval(percent.low, percent.high, places);
  return { runs: [run, { kind: "text", text: ` (${interval})` }], align: "right" };
}

function table(
  id: string,
  caption: string,
  columns: typeof COLUMNS,
  rows: readonly (readonly Cell[])[],
): Block {
  return {
    kind: "table",
    id,
    caption,
    head: [
      textCell("Scenario"),
      ...columns.map(([, name]) => ({ ...textCell(name), align: "right" as const })),
    ],
    rows,
    widths: [2.4, ...columns.map(() => 1.5)],
  };
}

function paragraph(said: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: said }] };
}
