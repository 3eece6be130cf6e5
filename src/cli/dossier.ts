/**
 * `millrace factors --dossier`: one page for each factor, in one HTML file.
 */

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { IndicatorId } from "../account/indicators.js";
import { swingsOf } from "../account/swings.js";
import { svgText } from "../charts/svg.js";
import { swingsWithYields } from "../compare/yield-swings.js";
import type { Factor, FactorSet } from "../factors/factor.js";
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

/** Draws: swings and uses do not hang on them, and the fewest are drawn fastest. */
const DRAWS = 200;

/** Savings whose doubt is shared out. */
const SAVINGS = ["water", "cod", "energy", "co2-location"] satisfies IndicatorId[];

/**
 * Writes the dossier.
 *
 * @param factors - all factors, those of the folder's own among them
 * @param shown - the ones to show
 * @param options - options
 * @returns exit code
 */
export async function dossier(
  factors: FactorSet,
  shown: readonly Factor[],
  options: DossierOptions,
): Promise<number> {
  // Without a mill of one's own, use and doubt are those of the mill that `start` lays out.
  const own = existsSync(options.plant);
  const plant = own ? options.plant : join(shippedFolder("templates"), "mill", "plant.yaml");
  const { assessment, problems } = await assess([], {
    plant,
    asOf: options.asOf,
    per: "m2",
    draws: DRAWS,
    seed: 1,
  });
  if (assessment === undefined) return refuse(problems, options.json);
  const { account, plant: mill, yields, version } = assessment.input;
  progress("writing the dossier");
  const swings = swingsOf(account.program, SAVINGS);
  const document = composeDossier({
    factors,
    shown,
    uses: usesOf(account.program),
    indicators: account.program.indicators,
    swings: yields === undefined ? swings : swingsWithYields(swings, yields),
    house: own ? mill.house : `${mill.house}, which millrace start lays out`,
    date: options.asOf,
    version,
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
