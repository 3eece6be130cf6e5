/**
 * `millrace factors --dossier`: one section for each factor, as HTML.
 */

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { svgText } from "../charts/svg.js";
import type { Factor } from "../factors/factor.js";
import { composeDossier } from "../report/dossier/dossier.js";
import { usesOf } from "../report/dossier/uses.js";
import { drawCharts } from "../report/draw-charts.js";
import { writeHtml } from "../report/html/write-html.js";
import { assess } from "./assess.js";
import { EXIT } from "./exit.js";
import { builtFile, shippedFolder, writeAll } from "./files.js";
import { data, out, progress, refuse } from "./say.js";

/** Options of the command. */
export interface DossierOptions {
  /** Plant file. */
  readonly plant: string;
  /** Day of the dossier. */
  readonly asOf: string;
  /** Folder it is written to. */
  readonly out: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Draws enough for medians; swings do not hang on them. */
const DRAWS = 200;

/**
 * Writes the dossier.
 *
 * @param shown - factors to show; all those in force when undefined
 * @param options - options
 * @returns exit code
 */
export async function dossier(
  shown: (factor: Factor) => boolean,
  options: DossierOptions,
): Promise<number> {
  // Without a mill of one's own, use and doubt are those of the mill that `start` lays out.
  const plant = existsSync(options.plant)
    ? options.plant
    : join(shippedFolder("templates"), "mill", "plant.yaml");
  const { assessment, problems } = await assess([], {
    plant,
    asOf: options.asOf,
    per: "m2",
    draws: DRAWS,
    seed: 1,
  });
  if (assessment === undefined) return refuse(problems, options.json);
  const { input } = assessment;
  progress("writing the dossier");
  const document = composeDossier({
    factors: input.factors,
    shown: [...input.factors.factors.values()].filter(shown),
    uses: usesOf(input.account.program),
    swings: input.swings,
    house: input.plant.house,
    date: options.asOf,
    version: input.version,
  });
  const font = (face: string): string =>
    readFileSync(builtFile(`fonts/inter-${face}.woff2`)).toString("base64");
  const html = writeHtml(drawCharts(document), {
    fonts: { regular: font("regular"), semibold: font("semibold"), italic: font("italic") },
    drawingSvg: svgText,
  });
  progress("");
  const written = writeAll(options.out, new Map([["dossier.html", html]]));
  if (options.json === true) data({ written });
  else for (const path of written) out(path);
  return EXIT.done;
}
