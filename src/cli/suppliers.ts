/**
 * `millrace suppliers`: sets suppliers side by side from their packs or their logs.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import type { IndicatorId } from "../account/indicators.js";
import type { FactorSet } from "../factors/factor.js";
import { MissingFactor } from "../plant/quantities.js";
import type { Problem } from "../problems/problem.js";
import { composeSuppliers } from "../report/suppliers/compose-suppliers.js";
import { supplierPage } from "../report/suppliers/supplier-page.js";
import type { Given } from "../suppliers/candidate.js";
import { compareSuppliers, type SuppliersCompared } from "../suppliers/compare-suppliers.js";
import type { Refused } from "../suppliers/gate.js";
import { makePack } from "../suppliers/make-pack.js";
import { asTold } from "../suppliers/standings.js";
import { readMix, type ReferenceMix } from "../suppliers/reference.js";
import { evidenceOf } from "./evidence.js";
import { EXIT } from "./exit.js";
import { type FileContent, shippedFolder, writeAll } from "./files.js";
import { startPress } from "./press.js";
import { knownKeys } from "./known-keys.js";
import { html } from "./page.js";
import { data, err, out, progress, refuse } from "./say.js";
import { shippedFactors, verifyAll } from "./verify.js";

/** Options of the command. */
export interface SuppliersOptions {
  /** File of the mix. */
  readonly reference?: string;
  /** File of a public key that is known. */
  readonly key?: string;
  /** Folder of public keys that are known. */
  readonly keys?: string;
  /** Indicators, the first the main one. */
  readonly by: readonly IndicatorId[];
  /** Day of the comparison. */
  readonly asOf: string;
  /** Folder for the reports. */
  readonly out: string;
  /** What to write. */
  readonly formats: readonly string[];
  /** Number of draws; by the number of suppliers when left out. */
  readonly draws?: number;
  /** Seed. */
  readonly seed: number;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Suppliers up to which values are drawn `MANY` times, and `FEWER` times beyond. */
const [FEW, MANY, FEWER] = [12, 2000, 1000] as const;

/** Version of the tool, as in package.json. */
const VERSION = "0.1.0";

/**
 * Runs the command. The mix is read before any supplier's file is.
 *
 * @param paths - packs, and folders with a plant file and logs
 * @param options - options
 * @returns exit code: refused where nobody is left to compare
 */
export async function suppliers(
  paths: readonly string[],
  options: SuppliersOptions,
): Promise<number> {
  const { mix, problems } = mixIn(options.reference);
  const known = knownKeys(options);
  const absent = paths.filter((path) => !existsSync(path)).map(missing);
  const unready = [...problems, ...known.problems, ...absent];
  if (unready.length > 0) return refuse(unready, options.json);
  const shipped = shippedFactors();
  progress("reading suppliers");
  const { given, refused, problems: unread } = await givenIn(paths, shipped, options, known.keys);
  if (unread.length > 0) return refuse(unread, options.json);
  progress("comparing");
  const draws = options.draws ?? (given.length > FEW ? FEWER : MANY);
  const compared = withRefused(
    compareSuppliers(given, {
      shipped,
      ...(mix === undefined ? {} : { mix }),
      asOf: options.asOf,
      draws,
      seed: options.seed,
      ids: options.by,
    }),
    refused,
  );
  progress("writing");
  const written = await writeReports(compared, { ...options, draws });
  progress("");
  const code = compared.gate.verdict === "not comparable" ? EXIT.refused : EXIT.done;
  if (options.json === true) {
    data({ written, verdict: compared.gate.verdict, ...summary(compared), exit: code });
    return code;
  }
  for (const { alias, why, places } of compared.gate.refused)
    err(
      `${alias} stays out: ${why}${places.length === 0 ? "" : ` (at ${places.slice(0, 4).join(", ")})`}`,
    );
  out(compared.gate.verdict);
  for (const path of written) out(path);
  return code;
}

function mixIn(path: string | undefined): {
  readonly mix?: ReferenceMix;
  readonly problems: readonly Problem[];
} {
  if (path === undefined) return { problems: [] };
  if (!existsSync(path)) return { problems: [missing(path)] };
  const { value, problems } = readMix({ name: path, text: readFileSync(path, "utf8") });
  return { ...(value === undefined ? {} : { mix: value }), problems };
}

interface GivenFiles {
  readonly given: readonly Given[];
  readonly refused: readonly Refused[];
  readonly problems: readonly Problem[];
}

async function givenIn(
  paths: readonly string[],
  shipped: FactorSet,
  options: SuppliersOptions,
  keys: ReadonlyMap<string, string> | undefined,
): Promise<GivenFiles> {
  const given: Given[] = [];
  const refused: Refused[] = [];
  const names = new Set<string>();
  const twice: Problem[] = [];
  const named = (alias: string, file: string): string => {
    const same = alias.normalize("NFKC").toLowerCase();
    if (names.has(same)) twice.push(aliasTwice(file, alias));
    names.add(same);
    return alias;
  };
  const packs = paths.filter((path) => !statSync(path).isDirectory());
  const checked = new Map(
    verifyAll(packs, shipped, {
      part: "as printed",
      today: options.asOf,
      ...(keys === undefined ? {} : { keys }),
    }).map((one) => [one.file, one]),
  );
  for (const path of paths) {
    const verified = checked.get(path);
    if (verified !== undefined) {
      if (verified.sealed === undefined) {
        const failed = verified.checks.filter(({ outcome }) => outcome === "fail");
        refused.push({
          alias: basename(path),
          cause: "not read",
          why: `is no pack that can be read: ${failed.map(({ found }) => found).join("; ")}`,
          places: failed.flatMap(({ places }) => places),
        });
      } else
        given.push({
          alias: named(verified.sealed.pack.alias, path),
          pack: verified.sealed.pack,
          verified,
        });
      continue;
    }
    const { pack, problems } = await packFrom(path, options);
    if (pack === undefined) return { given, refused, problems };
    given.push({ alias: named(pack.alias, path), pack });
  }
  return { given, refused, problems: twice };
}

// A folder is worked out here, as its owner would have sealed it.
async function packFrom(
  folder: string,
  options: SuppliersOptions,
): Promise<{ readonly pack?: Given["pack"]; readonly problems: readonly Problem[] }> {
  const plant = join(folder, "plant.yaml");
  const { input, problems } = await evidenceOf(
    [],
    { ...options, plant, draws: 500 },
    basename(folder),
  );
  if (input === undefined) return { problems };
  try {
    const made = makePack({ ...input, alias: aliasFrom(input.plant.house) });
    return made.value === undefined
      ? { problems: made.problems }
      : { pack: made.value, problems: [] };
  } catch (error) {
    if (!(error instanceof MissingFactor)) throw error;
    return {
      problems: [
        {
          code: "factor-missing",
          severity: "refused",
          file: plant,
          value: error.id,
          expected: `a factor in force (${error.message})`,
          remedy: "Choose a later --as-of.",
        },
      ],
    };
  }
}

// A house may be called what no alias may be.
function aliasFrom(house: string): string {
  const plain = house.replace(/[^\p{L}\p{M}\p{N} .'’-]+/gu, " ").trim();
  return plain.slice(0, 60) || "a supplier without a name";
}

function aliasTwice(file: string, alias: string): Problem {
  return {
    code: "alias-twice",
    severity: "refused",
    file,
    value: alias,
    expected: "a name that no other supplier has",
    remedy: "Leave one of the two out, or ask for a pack under another alias.",
  };
}

function withRefused(compared: SuppliersCompared, refused: readonly Refused[]): SuppliersCompared {
  if (refused.length === 0) return compared;
  const { gate } = compared;
  const verdict = gate.verdict === "comparable" ? "partly comparable" : gate.verdict;
  return { ...compared, gate: { ...gate, verdict, refused: [...refused, ...gate.refused] } };
}

async function writeReports(
  compared: SuppliersCompared,
  options: SuppliersOptions & { readonly draws: number },
): Promise<readonly string[]> {
  const template = readFileSync(join(shippedFolder("templates"), "suppliers.md"), "utf8");
  const files = new Map<string, FileContent>();
  const document = composeSuppliers(
    compared,
    { date: options.asOf, version: VERSION, seed: options.seed, draws: options.draws },
    template,
  );
  if (options.formats.includes("json"))
    files.set("suppliers.json", `${JSON.stringify({ document, ...summary(compared) }, null, 2)}\n`);
  const press = startPress({ draws: true, pdf: options.formats.includes("pdf") });
  try {
    const pressed = press.set(document, options.formats.includes("pdf"));
    if (options.formats.includes("html"))
      files.set("suppliers.html", await html(await pressed.drawn));
    const pdf = await pressed.pdf;
    if (pdf !== undefined) files.set("suppliers.pdf", pdf.bytes);
  } finally {
    await press.stop();
  }
  if (options.formats.includes("html"))
    for (const { alias } of compared.candidates) {
      const page = supplierPage(compared, alias, options.asOf);
      // Two names may come to one file name; neither supplier may get the other's page.
      let name = `own-${fileName(alias)}.html`;
      for (let i = 2; files.has(name); i++) name = `own-${fileName(alias)}-${i}.html`;
      if (page !== undefined) files.set(name, await html(page));
    }
  return writeAll(options.out, files);
}

function fileName(alias: string): string {
  return (
    alias
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "") || "supplier"
  );
}

function summary({ gate, mix, covered, results }: SuppliersCompared): object {
  return {
    conditions: gate.lines,
    refused: gate.refused,
    mix,
    covered,
    results: results.map(({ id, unit, standings, free, reversal }) => ({
      id,
      unit: `${unit} per accepted m²`,
      standings: asTold(standings),
      free: free === undefined ? null : asTold(free),
      reversal: reversal ?? null,
    })),
  };
}

function missing(file: string): Problem {
  return {
    code: "file-missing",
    severity: "refused",
    file,
    expected: "a pack, or a folder with plant.yaml and log.csv",
    remedy: "Check the path.",
  };
}
