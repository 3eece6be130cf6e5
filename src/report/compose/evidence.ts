/**
 * Chapters on evidence: the import, lots that stand apart, cautions.
 */

import { disagreements } from "../../account/logged-settings.js";
import { cautionsFor, type CautionTopic } from "../cautions.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { readLotWords } from "./standing.js";
import { inputDigests } from "./digests.js";
import { reasonWords } from "./reasons.js";
import { valueText } from "./units.js";

/**
 * Import ledger: every row read, adding to 100 %.
 *
 * @param desk - the report
 * @returns blocks
 */
export function importBlocks(desk: ReportDesk): readonly Block[] {
  const { files, counts } = desk.input.log;
  const total = files.reduce(
    (sum, file) => ({
      rows: sum.rows + file.rows,
      accepted: sum.accepted + file.accepted,
      corrected: sum.corrected + file.corrected,
      setAside: sum.setAside + file.setAside,
      outside: sum.outside + file.outside,
    }),
    { rows: 0, accepted: 0, corrected: 0, setAside: 0, outside: 0 },
  );
  const share = (part: number): string =>
    total.rows === 0 ? "–" : formatPercent(part / total.rows, 1);
  const row = (words: string, part: number): readonly Cell[] => [
    textCell(words, true),
    numberCell(formatNumber(part, 0)),
    numberCell(share(part)),
  ];
  const repeated = counts.get("lot-repeated")?.count ?? 0;
  const taken = total.accepted + total.corrected - repeated;
  const merged =
    repeated === 0
      ? ""
      : ` ${formatNumber(total.accepted, 0)} accepted and ${formatNumber(total.corrected, 0)} corrected rows make ${formatNumber(taken, 0)} lots, because ${formatNumber(repeated, 0)} ${repeated === 1 ? "row repeats" : "rows repeat"} another word for word and ${repeated === 1 ? "was" : "were"} merged with it.`;
  const reasons = [...counts].sort(([a, x], [b, y]) => y.count - x.count || (a < b ? -1 : 1));
  const { logs, plant } = inputDigests(desk.input);
  return [
    {
      kind: "paragraph",
      runs: [
        {
          kind: "text",
          text: `Of ${formatNumber(total.rows, 0)} rows read, ${share(total.accepted + total.corrected)} were taken, ${share(total.setAside)} were set aside and ${share(total.outside)} lie outside the period.${merged}`,
        },
      ],
    },
    desk.figure(
      "import",
      "Rows of the log: what became of them",
      "One bar of all rows read, split into accepted, corrected, set aside and outside the period.",
      {
        kind: "import-bars",
        data: {
          accepted: total.accepted,
          corrected: total.corrected,
          setAside: total.setAside,
          outside: total.outside,
        },
      },
    ),
    {
      kind: "table",
      id: "import-ledger",
      caption: `Import ledger over ${files.length} ${files.length === 1 ? "file" : "files"}; the parts add up to the rows read.`,
      head: [
        textCell("Rows"),
        { ...textCell("Number"), align: "right" },
        { ...textCell("Share"), align: "right" },
      ],
      rows: [
        row("Read", total.rows),
        row("Accepted as they stand", total.accepted),
        row("Corrected, or merged with an equal row", total.corrected),
        row("Set aside, see setaside.csv", total.setAside),
        row("Outside the period asked for", total.outside),
      ],
      widths: [3, 1, 1],
    },
    {
      kind: "table",
      id: "import-reasons",
      caption: "By reason; a row may have several.",
      behind: true,
      head: [textCell("Reason"), textCell("Effect"), { ...textCell("Times"), align: "right" }],
      rows:
        reasons.length === 0
          ? [[textCell("none", true), textCell("–"), numberCell("0")]]
          : reasons.map(([code, { severity, count }]) => [
              textCell(reasonWords(code), true),
              textCell(
                severity === "set-aside"
                  ? "row set aside"
                  : severity === "corrected"
                    ? "row corrected"
                    : "refused",
              ),
              numberCell(String(count)),
            ]),
    },
    {
      kind: "table",
      id: "import-files",
      caption: `Files read. The footer’s “logs” is the SHA-256 (${logs.slice(0, 12)}…) of the digests of all logs, sorted, one a line; “plant” is that of the plant file’s contents as read, written as JSON (${plant.slice(0, 12)}…); “factors” is that of all factor files. ${desk.input.readings === undefined ? "Meter readings are in none of them, because no figure rests on them." : `Meter readings as read, written as JSON, have ${desk.input.readings.slice(0, 12)}….`}`,
      behind: true,
      head: [
        textCell("File"),
        { ...textCell("Bytes"), align: "right" },
        { ...textCell("Rows"), align: "right" },
        textCell("SHA-256, first 16 digits"),
      ],
      rows: files.map((file) => [
        textCell(file.name, true),
        numberCell(formatNumber(file.bytes, 0)),
        numberCell(formatNumber(file.rows, 0)),
        textCell(file.sha256.slice(0, 16)),
      ]),
    },
  ];
}

/**
 * Lots that stand outside the comparison, in numbers.
 *
 * @param desk - the report
 * @returns a list
 */
export function apartList(desk: ReportDesk): Block {
  const { groups, uncovered, withReadings, filtered, account } = desk.input;
  const places = amountPlaces();
  let without = 0;
  let withoutArea = 0;
  let partial = 0;
  for (const { key, lots, amounts } of groups) {
    if (account.program.classOf(key) === undefined) {
      without += lots;
      withoutArea += amounts[places.printed] ?? 0;
    } else if (key.blend.includes(" ")) partial += lots;
  }
  const items = [
    ...(without === 0
      ? []
      : [
          `${formatNumber(without, 0)} lots (${formatNumber(withoutArea, 0)} m² printed) have no counterpart, by fibre, blend or routes of the plant file; they are in no figure.`,
        ]),
    ...(partial === 0
      ? []
      : [
          `${formatNumber(partial, 0)} lots are blends: a dye route with one class of dye colours one fibre of them, so the two routes are not equivalent there unless the shade allows it.`,
        ]),
    ...(uncovered.length === 0
      ? []
      : [
          `${formatNumber(uncovered.length, 0)} reprints, or parts of them, replace more than the original rejected; ${formatNumber(
            uncovered.reduce((sum, { area }) => sum + area, 0),
            0,
          )} m² of theirs count as no accepted area.`,
        ]),
    withReadings === 0
      ? "No lot has readings of its own."
      : `${formatNumber(withReadings, 0)} lots have readings of their own; ${readLotWords(withReadings, desk.input.calibrated)}.`,
    ...disagreements(account.program).map(
      ({ route, setting, unit, logged, low, high }) =>
        `Caution: lots of route ${route} log ${valueText(logged, unit)} on average, outside the interval ${valueText(low, "1")} to ${valueText(high, "1")} of ${setting}, which the lots without a log are given; set it in the plant file.`,
    ),
    ...(filtered > 0
      ? [
          `${formatNumber(filtered, 0)} lots were read and left out by the choice of client, site or order.`,
        ]
      : []),
  ];
  return { kind: "list", ordered: false, items: items.map((text) => [{ kind: "text", text }]) };
}

/**
 * Cautions that apply to the routes shown.
 *
 * @param desk - the report
 * @returns a list
 */
export function cautionList(desk: ReportDesk): Block {
  const topics = new Set<CautionTopic>([
    "pigment-curing",
    "effluent",
    "energy-change",
    "finished-goods-eu",
    "all",
  ]);
  for (const { arms } of desk.input.account.program.classes) {
    for (const arm of ["pigment", "dye"] as const) {
      for (const { kind } of arms[arm].steps) {
        if (kind === "calender") topics.add("calender");
        if (kind === "steamer" || kind === "wash-range") topics.add("steam");
        if (kind.startsWith("stenter") || kind === "oven" || kind === "hot-flue")
          topics.add("stenter");
      }
      if (arms[arm].route.steps.some((step) => step.choices["heat"] === "oil"))
        topics.add("thermal-oil");
      if (arms[arm].route.dye !== undefined && arms[arm].route.dye !== "disperse")
        topics.add("urea");
    }
  }
  const marks = {
    read: "",
    "second-hand": " [read in a summary by others]",
    practice: " [common practice, no source]",
    own: "",
  };
  return {
    kind: "list",
    ordered: false,
    items: cautionsFor(topics).map(({ text, mark, source }) => [
      { kind: "text", text: `${text}${source === undefined ? "" : ` (${source})`}${marks[mark]}` },
    ]),
  };
}
