// Times the built tool, and says how much memory it took at most: `npm run bench`.
//
// Each run is a process of its own, measured from its start to its end; the child itself says its
// peak of resident memory, through a module loaded before the tool.
import { spawnSync } from "node:child_process";
import {
  createWriteStream,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { once } from "node:events";
import { fileURLToPath, pathToFileURL } from "node:url";

const TOP = fileURLToPath(new URL("../../", import.meta.url));
const TOOL = join(TOP, "dist", "cli", "main.js");
const AS_OF = "2026-11-25";
const LOTS = Number(process.argv[2] ?? 1_000_000);
const RUNS = 5;

/** Most memory that a million lots may take. [MB] */
const MOST_MB = 300;

const scratch = mkdtempSync(join(tmpdir(), "millrace-bench-"));

/** Module that writes the child's peak of resident memory [MB] and its processor time [ms] where the parent reads them. */
const witness = join(scratch, "witness.mjs");
const peakFile = join(scratch, "peak");
writeFileSync(
  witness,
  [
    'import { writeFileSync } from "node:fs";',
    'process.on("exit", () => {',
    "  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();",
    "  const said = [maxRSS / 1024, (userCPUTime + systemCPUTime) / 1000];",
    `  writeFileSync(${JSON.stringify(peakFile)}, JSON.stringify(said));`,
    "});",
  ].join("\n"),
);

/** Runs node once; gives milliseconds and MB. */
function run(words, folder = scratch) {
  const started = performance.now();
  const { status, stderr } = spawnSync(
    process.execPath,
    ["--import", pathToFileURL(witness).href, ...words],
    { cwd: folder, encoding: "utf8" },
  );
  const ms = performance.now() - started;
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${status}:\n${stderr}`);
  const [mb, cpu] = JSON.parse(readFileSync(peakFile, "utf8"));
  return { ms, mb, cpu };
}

function median(numbers) {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

function several(words, folder) {
  const all = Array.from({ length: RUNS }, () => run(words, folder));
  return {
    ms: median(all.map(({ ms }) => ms)),
    mb: Math.max(...all.map(({ mb }) => mb)),
    cpu: median(all.map(({ cpu }) => cpu)),
    from: Math.min(...all.map(({ ms }) => ms)),
    to: Math.max(...all.map(({ ms }) => ms)),
  };
}

/** Numbers below 1, the same in every run (a linear congruential generator modulo 2 to the 32). */
function seeded(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/**
 * Writes a log of many lots in the columns of the demo mill; gives its bytes. Where it is full, names of lots
 * are long, six lots of seven have rejects, and one of 33 is a reprint.
 */
async function writeLog(path, lots, full) {
  const next = seeded(1);
  const pick = (list) => list[Math.floor(next() * list.length)];
  const cloths = [
    ["plain cotton", "cotton", 140, ["pigment-calender", "pigment-stenter", "reactive"]],
    ["viscose challis", "viscose", 120, ["pigment-calender", "reactive"]],
    ["heavy twill", "cotton", 260, ["pigment-stenter", "reactive"]],
    ["mixed poplin", "cotton 65 polyester 35", 165, ["pigment-calender", "reactive"]],
  ];
  const out = createWriteStream(path);
  const name = (i) => (full ? `LOT-2026-MAIN-${String(i).padStart(8, "0")}` : `L-${i}`);
  const heads = "lot,date,client,order,fabric,fibre,gsm,width_m,length_m,rejected_m,route,ink_ml";
  out.write(`${heads},coverage_pct${full ? ",reprint_of" : ""}\n`);
  let batch = "";
  for (let i = 0; i < lots; i++) {
    const [fabric, fibre, gsm, routes] = pick(cloths);
    const day = new Date(Date.UTC(2025, 9, 1) + Math.floor(next() * 364) * 86_400_000);
    const length = (20 + 900 * next()).toFixed(1);
    const rejected = next() < (full ? 6 / 7 : 0.3) ? (5 * next()).toFixed(1) : "";
    const ink = next() < 0.7 ? Math.round(length * 18) : "";
    const coverage = next() < 0.8 ? Math.round(20 + 70 * next()) : "";
    const reprint = full ? `,${i % 33 === 32 ? name(i - 1) : ""}` : "";
    batch += `${name(i)},${day.toISOString().slice(0, 10)},Client ${Math.floor(next() * 40)},O-${i >> 3},${fabric},${fibre},${gsm},1.5,${length},${rejected},${pick(routes)},${ink},${coverage}${reprint}\n`;
    if (batch.length > 1 << 16) {
      if (!out.write(batch)) await once(out, "drain");
      batch = "";
    }
  }
  out.end(batch);
  await once(out, "finish");
  return statSync(path).size;
}

function tell(what, { ms, mb, cpu, from, to }, more = "") {
  const spread = from === undefined ? "" : ` (${from.toFixed(0)} to ${to.toFixed(0)})`;
  console.log(
    `${what.padEnd(46)} ${ms.toFixed(0).padStart(7)} ms${spread.padEnd(18)} ${cpu.toFixed(0).padStart(7)} ms of processors ${mb.toFixed(0).padStart(5)} MB  ${more}`,
  );
}

try {
  console.log(
    `node ${process.version}, ${process.platform} ${process.arch}, ${cpus().length} × ${cpus()[0]?.model ?? "?"}`,
  );
  const demo = join(TOP, "examples", "demo");
  const plain = several(["-e", "0"]);
  tell(`node alone, median of ${RUNS}`, plain);
  const help = several([TOOL, "--help"]);
  tell(
    `millrace --help, median of ${RUNS}`,
    help,
    `${(help.ms - plain.ms).toFixed(0)} ms over node alone`,
  );
  const report = (out, ...words) => [
    TOOL,
    ...["report", "--as-of", AS_OF, "--out", join(scratch, out), ...words],
  ];
  const rows = readFileSync(join(demo, "log.csv"), "utf8").split("\n").length - 2;
  tell(
    `demo check, ${rows} lines`,
    several([TOOL, "check", "--as-of", AS_OF, "--out", join(scratch, "c")], demo),
  );
  tell(`demo report: JSON, median of ${RUNS}`, several(report("j", "--formats", "json"), demo));
  tell(`demo report: HTML, PDF and JSON, median of ${RUNS}`, several(report("all"), demo));

  const plant = ["--plant", join(demo, "plant.yaml")];
  for (const full of [false, true]) {
    const log = join(scratch, "log.csv");
    const bytes = await writeLog(log, LOTS, full);
    const size = `${(bytes / 1e6).toFixed(0)} MB of ${full ? "full " : ""}log`;
    for (const [what, words] of [
      ["check", [TOOL, "check", log, ...plant, "--as-of", AS_OF, "--out", join(scratch, "m")]],
      ["report: JSON", [...report("m", "--formats", "json", ...plant), log]],
    ]) {
      const made = run(words);
      const rate = Math.round((1000 * LOTS) / made.ms);
      const over = LOTS > 1e6 || made.mb < MOST_MB ? "" : `; MORE THAN ${MOST_MB} MB`;
      tell(`${LOTS} lots, ${what}`, made, `${rate} rows/s, ${size}${over}`);
    }
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
