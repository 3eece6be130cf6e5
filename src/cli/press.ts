/**
 * Charts and PDF in a thread of their own, so that they are ready to work when the report is composed and
 * then work while the rest is written.
 */

import { Worker } from "node:worker_threads";
import type { ReportDocument } from "../report/document.js";
import { builtFile } from "./files.js";

/** A PDF made. */
export interface PressedPdf {
  /** The file. */
  readonly bytes: Uint8Array;
  /** Characters shown as a square, by code point, with how often. */
  readonly replaced: ReadonlyMap<string, number>;
  /** Links and references that lead nowhere. */
  readonly dead: readonly string[];
}

/** A report handed over. */
export interface Order {
  /** The report as composed. */
  readonly document: ReportDocument;
  /** Whether a PDF is wanted. */
  readonly pdf: boolean;
}

/** What comes back: first the charts, then the PDF if one was asked for. */
export type Delivery =
  | { readonly kind: "drawn"; readonly document: ReportDocument }
  | { readonly kind: "pdf"; readonly pdf: PressedPdf };

/** The press, waiting for a report. */
export interface Press {
  /**
   * Hands a report over.
   *
   * @param document - the report as composed
   * @param pdf - whether a PDF is wanted
   * @returns the report with its charts, and its PDF
   */
  readonly set: (
    document: ReportDocument,
    pdf: boolean,
  ) => {
    readonly drawn: Promise<ReportDocument>;
    readonly pdf: Promise<PressedPdf | undefined>;
  };
  /** Stops the thread. */
  readonly stop: () => Promise<void>;
}

/**
 * Starts the press. It loads what it needs at once.
 *
 * @returns the press
 */
export function startPress(): Press {
  // Run from the sources, the thread is still the one of the last build: threads take compiled code only.
  const worker = new Worker(builtFile("cli/press-thread.js"));
  const next = <K extends Delivery["kind"]>(kind: K): Promise<Extract<Delivery, { kind: K }>> =>
    new Promise((resolve, reject) => {
      worker.on("message", (delivery: Delivery) => {
        if (delivery.kind === kind) resolve(delivery as Extract<Delivery, { kind: K }>);
      });
      worker.on("error", reject);
    });
  return {
    set: (document, pdf) => {
      const drawn = next("drawn").then((delivery) => delivery.document);
      const made = pdf ? next("pdf").then((delivery) => delivery.pdf) : Promise.resolve(undefined);
      worker.postMessage({ document, pdf } satisfies Order);
      return { drawn, pdf: made };
    },
    stop: async () => {
      await worker.terminate();
    },
  };
}
