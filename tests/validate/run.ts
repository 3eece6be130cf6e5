/**
 * Writes validation.html and validation.md. Run after a build, as `npm run validate` does:
 *
 *     node --import tsx tests/validate/run.ts [--quick] [--as-of DAY] [--draws N] [--worlds N] [--first N]
 *         [--out FOLDER]
 *
 * `--first` is the number of the first world, for others than those that anything was tuned on; `--quick` leaves the known worlds out, which take some ten minutes.
 */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import manifest from "../../package.json" with { type: "json" };
import { svgText } from "../../src/charts/svg.js";
import { builtFile, writeAll } from "../../src/cli/files.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { TOP } from "../tools/tree.js";
import { calibration } from "./calibration.js";
import { markdownOf } from "./markdown.js";
import { pageOf } from "./page.js";
import { resultsOf } from "./results.js";

/** Draws of each report in a known world. */
const DRAWS_IN_WORLDS = 2000;

const SEED = 1;

const { values } = parseArgs({
  options: {
    quick: { type: "boolean", default: false },
    "as-of": { type: "string", default: new Date().toISOString().slice(0, 10) },
    draws: { type: "string", default: "2000" },
    worlds: { type: "string", default: "500" },
    first: { type: "string", default: "0" },
    out: { type: "string", default: join(TOP, "out") },
  },
});
const date = values["as-of"];
if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) fail(`--as-of ${date}: expected a day as 2026-01-31`);
const draws = count("draws", values.draws);

say(`putting fabrics through the hall, ${draws} draws each`);
const results = resultsOf({ asOf: date, draws, seed: SEED });
const worlds = values.quick
  ? []
  : await calibration({
      worlds: count("worlds", values.worlds),
      first: count("first", values.first, 0),
      draws: DRAWS_IN_WORLDS,
      onProgress: say,
    });
const document = pageOf({
  results,
  worlds,
  date,
  draws,
  seed: SEED,
  version: manifest.version,
  digest: SHIPPED.digest,
});
const font = (face: string): string =>
  readFileSync(builtFile(`fonts/inter-${face}.woff2`)).toString("base64");
const html = writeHtml(document, {
  fonts: { regular: font("regular"), semibold: font("semibold"), italic: font("italic") },
  drawingSvg: svgText,
});
const files = new Map([
  ["validation.html", html],
  ["validation.md", markdownOf(document)],
]);
for (const path of writeAll(values.out, files)) process.stdout.write(`${path}\n`);

function count(name: string, text: string, least = 30): number {
  const number = Number(text);
  if (!(Number.isInteger(number) && number >= least)) {
    fail(`--${name} ${text}: expected a whole number from ${least} up`);
  }
  return number;
}

function say(text: string): void {
  process.stderr.write(`${text}\n`);
}

function fail(text: string): never {
  say(text);
  process.exit(2);
}
