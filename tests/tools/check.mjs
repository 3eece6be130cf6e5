// All checks of the project, as `npm test` runs them: the build, for tests of the command line use its
// fonts and its thread; format, types, lint and dead code two at a time; then the tests alone, so that
// nothing disturbs those that keep time. `--quick` leaves out lint, dead code and the tests that need
// programs from outside.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const TOP = fileURLToPath(new URL("../../", import.meta.url));
const QUICK = process.argv.includes("--quick");

/** What takes longer than this hangs. [ms] */
const PATIENCE = 12 * 60_000;

const scratch = mkdtempSync(join(tmpdir(), "millrace-check-"));
const reportFile = join(scratch, "tests.json");

// What `npm run build` does, without a shell.
const building = [
  { name: "build", script: "tests/tools/clean.mjs", options: [] },
  { name: "build", tool: "typescript", program: "tsc", options: ["-p", "tsconfig.json"] },
  { name: "build", script: "dist/build/assets.js", options: [] },
];

const still = [
  { name: "format", tool: "prettier", options: ["--check", "--log-level", "warn", "."] },
  { name: "types", tool: "typescript", program: "tsc", options: ["-p", "tests/tsconfig.json"] },
  {
    name: "lint",
    tool: "eslint",
    options: [
      ...["-c", "tests/lint.config.js", "--max-warnings", "0"],
      ...["--no-error-on-unmatched-pattern", "src", "tests", "examples"],
    ],
    slow: true,
  },
  { name: "dead code", tool: "knip", options: ["--no-progress"], slow: true },
];

const tests = {
  name: "tests",
  tool: "vitest",
  options: [
    // Files share what they load: most of the time would else go into loading the same modules again.
    ...["run", "--dir", "tests", "--no-isolate"],
    ...["--testTimeout", "20000", "--reporter", "default"],
    ...["--reporter", "json", `--outputFile.json=${reportFile}`],
    ...(QUICK ? ["--exclude", "**/outside/**"] : []),
  ],
};

/** Path of the script behind a package's command, so that no shell is needed on any system. */
function scriptOf(tool, program = tool) {
  const folder = join(TOP, "node_modules", tool);
  const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  return join(folder, typeof bin === "string" ? bin : bin[program]);
}

/** Runs one check to its end; gives what it printed, its exit code and how long it took. */
function run(check) {
  const started = performance.now();
  return new Promise((resolve) => {
    const script = check.script ?? scriptOf(check.tool, check.program);
    const child = spawn(process.execPath, [script, ...check.options], {
      cwd: TOP,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let output = "";
    const collect = (chunk) => (output += chunk);
    child.stdout.setEncoding("utf8").on("data", collect);
    child.stderr.setEncoding("utf8").on("data", collect);
    const alarm = setTimeout(() => {
      output += `\n${check.name} was stopped after ${PATIENCE / 60_000} minutes.\n`;
      child.kill("SIGKILL");
    }, PATIENCE);
    child.on("error", (fault) => collect(String(fault)));
    child.on("close", (code) => {
      clearTimeout(alarm);
      resolve({ check, output, code, seconds: (performance.now() - started) / 1000 });
    });
  });
}

/** Prints one line for a check, and all it had to say when it failed. */
function tell({ check, output, seconds }, failed, words = "") {
  const verdict = failed ? "FAILED" : "ok";
  const line = `${check.name.padEnd(10)} ${verdict.padEnd(7)} ${seconds.toFixed(1).padStart(6)} s`;
  console.log(words === "" ? line : `${line}  ${words}`);
  if (failed) console.log(`\n${output.trim()}\n`);
}

/** Counts the tests in the runner's own report, and lists those that were skipped. */
function counted() {
  let report;
  try {
    report = JSON.parse(readFileSync(reportFile, "utf8"));
  } catch {
    return { passed: 0, failed: 1, skipped: [] };
  }
  const count = { passed: 0, failed: 0, skipped: [] };
  for (const file of report.testResults) {
    const failedBefore = count.failed;
    for (const test of file.assertionResults) {
      if (test.status === "passed") count.passed++;
      else if (test.status === "failed") count.failed++;
      else count.skipped.push({ file: file.name, titles: [...test.ancestorTitles, test.title] });
    }
    // A file that could not even be loaded has no tests to its name.
    if (file.status === "failed" && count.failed === failedBefore) count.failed++;
  }
  return count;
}

/** Says what was left unchecked, by the outside program that was missing. */
function tellSkipped(skipped) {
  const absent = new Map();
  for (const { file, titles } of skipped) {
    const [group = "", ...rest] = titles;
    const [program, checks] = group.split(": ", 2);
    if (checks !== undefined && rest.length > 0) {
      absent.set(program, new Set([...(absent.get(program) ?? []), checks]));
    } else {
      const where = relative(TOP, file).split(sep).join("/");
      console.log(`skipped: ${where}: ${titles.join(" > ")}`);
    }
  }
  for (const [program, checks] of absent) {
    console.log(`absent: ${program}; not checked: ${[...checks].join(", ")}`);
  }
}

let passed = 0;
let failed = 0;
try {
  let built;
  for (const step of building) {
    const result = await run(step);
    built = { ...result, seconds: (built?.seconds ?? 0) + result.seconds };
    if (result.code !== 0) break;
  }
  tell(built, built.code !== 0);
  if (built.code !== 0) failed++;
  else passed++;

  const waiting = still.filter((check) => !(QUICK && check.slow));
  const lane = async () => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) {
      const result = await run(check);
      const bad = result.code !== 0;
      tell(result, bad);
      if (bad) failed++;
      else passed++;
    }
  };
  await Promise.all([lane(), lane()]);

  const result = await run(tests);
  const count = counted();
  // The runner may fail beside its tests: a stray rejection, a crash, no test found.
  if (result.code !== 0 && count.failed === 0) count.failed = 1;
  passed += count.passed;
  failed += count.failed;
  tell(result, count.failed > 0, `${count.passed} of ${count.passed + count.failed}`);
  tellSkipped(count.skipped);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
if (QUICK) console.log("--quick: lint, dead code and outside programs were left out");
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
