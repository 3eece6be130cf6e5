/**
 * The thread behind `press.ts`: works scenarios out, draws charts, sets the PDF.
 */

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parentPort, workerData } from "node:worker_threads";
import { calibrationOf } from "../account/calibration.js";
import type { drawCharts, Pictures } from "../report/draw-charts.js";
import type { PdfFonts } from "../report/pdf/pen.js";
import type { textsOf } from "../report/pdf/rehearsal.js";
import type { setPdf } from "../report/pdf/write-pdf.js";
import { openAsked } from "./asked-mill.js";
import { builtFile, shippedFolder } from "./files.js";
import type { Delivery, Order, PressStart } from "./press.js";
import { scenariosOf } from "./scenarios.js";
import type { Played, Setting } from "./understudy.js";
import type { Workspace } from "./workspace.js";

const start = workerData as PressStart;

/** What draws and sets; loaded when there is something to draw. */
interface Shop {
  readonly draw: typeof drawCharts;
  readonly print: typeof setPdf;
  readonly rehearse: (texts: readonly string[]) => Promise<void>;
  readonly textsOf: typeof textsOf;
  readonly fonts: PdfFonts;
}

async function openShop(): Promise<Shop> {
  const [drawing, setting, { rehearsal, textsOf }] = await Promise.all([
    import("../report/draw-charts.js"),
    import("../report/pdf/write-pdf.js"),
    import("../report/pdf/rehearsal.js"),
  ]);
  const font = (face: string): Uint8Array => readFileSync(builtFile(`fonts/inter-${face}.ttf`));
  const fonts = { regular: font("regular"), semibold: font("semibold"), italic: font("italic") };
  // The thread would only wait for the log to be read. A word set once is set faster the second time.
  const rehearse = async (texts: readonly string[]): Promise<void> => {
    if (start.pdf) await setting.setPdf(rehearsal(texts), fonts);
  };
  await rehearse(likelyTexts());
  return { draw: drawing.drawCharts, print: setting.setPdf, rehearse, textsOf, fonts };
}

// Names and sources of factors and the text between the numbers fill half of a report.
function likelyTexts(): readonly string[] {
  const texts = [readFileSync(join(shippedFolder("templates"), "report.md"), "utf8")];
  const pack = builtFile("factors.json");
  if (!existsSync(pack)) return texts;
  const { factors, sources } = JSON.parse(readFileSync(pack, "utf8")) as Packed;
  return [
    ...texts,
    ...factors.flatMap(({ id, words }) => [id, words]),
    ...sources.flatMap(([key, { author, title }]) => [key, author, title]),
  ];
}

/** What of the packed factors is read for its words alone. */
interface Packed {
  readonly factors: readonly { readonly id: string; readonly words: string }[];
  readonly sources: readonly (readonly [
    string,
    { readonly author: string; readonly title: string },
  ])[];
}

const shop = start.draws ? openShop() : undefined;
const pictures: Pictures = new Map();
let mill: Workspace | undefined;

function deliver(delivery: Delivery): void {
  parentPort?.postMessage(delivery);
}

function opened(): Workspace | undefined {
  return start.asked === undefined ? undefined : openAsked(start.asked).mill;
}

// Whatever goes wrong here goes wrong on the other side too, which can tell the user.
function play({ corrections, ...setting }: Setting): Played | undefined {
  try {
    mill ??= opened();
    if (mill === undefined) return undefined;
    const { plant, factors } = mill;
    const metered = corrections === undefined ? {} : { calibration: calibrationOf(corrections) };
    const { scenarios } = scenariosOf({ plant, factors, ...metered, ...setting });
    return scenarios === undefined
      ? undefined
      : { ...scenarios, played: scenarios.played.map(({ scenario: _house, ...rest }) => rest) };
  } catch {
    return undefined;
  }
}

async function work(order: Order): Promise<void> {
  switch (order.kind) {
    case "open":
      mill = opened();
      return;
    case "play":
      deliver({ kind: "played", played: play(order.setting) });
      return;
    case "proof": {
      const { draw, rehearse, textsOf } = await (shop ?? openShop());
      try {
        draw(order.document, pictures);
        await rehearse(textsOf(order.document.blocks));
      } catch {
        // It is met again in print.
      }
      return;
    }
    case "print": {
      const { draw, print, fonts } = await (shop ?? openShop());
      const drawn = draw(order.document, pictures);
      deliver({ kind: "drawn", document: drawn });
      if (!order.pdf) return;
      const { bytes, replaced, dead } = await print(drawn, fonts);
      deliver({ kind: "pdf", pdf: { bytes, replaced, dead } });
    }
  }
}

// One after the other. A fault in print ends the thread, which the other side is told of.
let last: Promise<void> = Promise.resolve();
parentPort?.on("message", (order: Order) => {
  last = last.then(() => work(order));
});
