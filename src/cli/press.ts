/**
 * A thread beside the command: it works scenarios out while the account is drawn, then draws charts and sets
 * the PDF while the rest is written.
 */

import { Worker } from "node:worker_threads";
import type { ReportDocument } from "../report/document.js";
import type { AskedOptions } from "./asked-mill.js";
import { builtFile } from "./files.js";
import type { Played, Setting, Understudy } from "./understudy.js";

/** A PDF made. */
export interface PressedPdf {
  /** The file. */
  readonly bytes: Uint8Array;
  /** Characters shown as a square, by code point, with how often. */
  readonly replaced: ReadonlyMap<string, number>;
  /** Links and references that lead nowhere. */
  readonly dead: readonly string[];
}

/** What the thread is told when it starts. */
export interface PressStart {
  /** Which mill, where there may be scenarios. */
  readonly asked?: AskedOptions;
  /** Whether there will be charts, and so whether to load what draws them at once. */
  readonly draws: boolean;
  /** Whether there will be a PDF. */
  readonly pdf: boolean;
}

/** What the thread is asked for. */
export type Order =
  | { readonly kind: "open" }
  | { readonly kind: "play"; readonly setting: Setting }
  | { readonly kind: "proof"; readonly document: ReportDocument }
  | { readonly kind: "print"; readonly document: ReportDocument; readonly pdf: boolean };

/** What comes back: scenarios; charts, then the PDF if one was asked for. */
export type Delivery =
  | { readonly kind: "played"; readonly played: Played | undefined }
  | { readonly kind: "drawn"; readonly document: ReportDocument }
  | { readonly kind: "pdf"; readonly pdf: PressedPdf };

/** The press, waiting for a report. */
export interface Press extends Understudy {
  /** Hands what there is of a report over, so that its charts are drawn and its words known beforehand. */
  readonly proof: (document: ReportDocument) => void;
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
 * Starts the press. With charts to draw it loads what it needs at once; else it waits for scenarios.
 *
 * @param start - what it is told
 * @returns the press
 */
export function startPress(start: PressStart): Press {
  let running: Worker | undefined;
  // Run from the sources, the thread is still the one of the last build: threads take compiled code only.
  const worker = (): Worker =>
    (running ??= new Worker(builtFile("cli/press-thread.js"), { workerData: start }));
  const next = <K extends Delivery["kind"]>(kind: K): Promise<Extract<Delivery, { kind: K }>> =>
    new Promise((resolve, reject) => {
      worker().on("message", (delivery: Delivery) => {
        if (delivery.kind === kind) resolve(delivery as Extract<Delivery, { kind: K }>);
      });
      worker().on("error", reject);
    });
  const order = (what: Order): void => {
    worker().postMessage(what);
  };
  if (start.draws) worker();
  return {
    open: () => {
      order({ kind: "open" });
    },
    play: async (setting) => {
      const played = next("played");
      order({ kind: "play", setting });
      return (await played).played;
    },
    proof: (document) => {
      order({ kind: "proof", document });
    },
    set: (document, pdf) => {
      const drawn = next("drawn").then((delivery) => delivery.document);
      const made = pdf ? next("pdf").then((delivery) => delivery.pdf) : Promise.resolve(undefined);
      order({ kind: "print", document, pdf });
      return { drawn, pdf: made };
    },
    stop: async () => {
      await running?.terminate();
    },
  };
}
