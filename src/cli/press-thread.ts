/**
 * The thread behind `press.ts`: draws charts, then sets the PDF.
 */

import { readFileSync } from "node:fs";
import { parentPort } from "node:worker_threads";
import { drawCharts } from "../report/draw-charts.js";
import { setPdf } from "../report/pdf/write-pdf.js";
import { builtFile } from "./files.js";
import type { Delivery, Order } from "./press.js";

const font = (face: string): Uint8Array => readFileSync(builtFile(`fonts/inter-${face}.ttf`));
const fonts = { regular: font("regular"), semibold: font("semibold"), italic: font("italic") };

function deliver(delivery: Delivery): void {
  parentPort?.postMessage(delivery);
}

async function work({ document, pdf }: Order): Promise<void> {
  const drawn = drawCharts(document);
  deliver({ kind: "drawn", document: drawn });
  if (!pdf) return;
  const { bytes, replaced, dead } = await setPdf(drawn, fonts);
  deliver({ kind: "pdf", pdf: { bytes, replaced, dead } });
}

// A fault here ends the thread, which the other side is told of.
parentPort?.on("message", (order: Order) => void work(order));
