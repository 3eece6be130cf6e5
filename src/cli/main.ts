#!/usr/bin/env node
/**
 * The command line. Commands are loaded when they are called, so that `--help` answers at once.
 */

import { Command, CommanderError, InvalidArgumentError } from "commander";
import type { CheckOptions } from "./check.js";
import { EXIT } from "./exit.js";
import type { ExplainOptions } from "./explain.js";
import type { FactorsOptions } from "./factors.js";
import type { ReportOptions } from "./report.js";

const today = new Date().toISOString().slice(0, 10);

function day(text: string): string {
  const date = new Date(`${text}T00:00:00Z`);
  if (
    !/^\d{4}-\d{2}-\d{2}$/.test(text) ||
    Number.isNaN(date.getTime()) ||
    date.toISOString().slice(0, 10) !== text
  ) {
    throw new InvalidArgumentError("It takes a day such as 2026-01-31.");
  }
  return text;
}

function whole(least: number, most: number): (text: string) => number {
  return (text) => {
    const number = Number(text);
    if (!Number.isInteger(number) || !(number >= least && number <= most)) {
      throw new InvalidArgumentError(`It takes a whole number from ${least} to ${most}.`);
    }
    return number;
  };
}

function oneOf(...words: readonly string[]): (text: string) => string {
  return (text) => {
    if (!words.includes(text))
      throw new InvalidArgumentError(`It takes one of ${words.join(", ")}.`);
    return text;
  };
}

function formats(text: string): readonly string[] {
  const list = text.split(",").map((word) => word.trim());
  const strange = list.find((word) => !["html", "pdf", "json"].includes(word));
  if (strange !== undefined)
    throw new InvalidArgumentError("It takes html, pdf and json, with commas between.");
  return list;
}

const program = new Command("millrace")
  .description(
    "Works out what printed fabric lots took in water, energy, emissions, effluent and money\non the route they went and on the route they could have gone, with the doubt of each figure.",
  )
  .version("0.1.0")
  .exitOverride()
  .showHelpAfterError("(add --help for the options of this command)");

let code: number = EXIT.done;

// A path that cannot be read or written is for the user to mend.
function isSystemFault(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && "syscall" in error;
}

program
  .command("start")
  .description("lay out a small, commented, working mill folder")
  .argument("<dir>", "folder to make")
  .addHelpText("after", "\nExample:\n  millrace start my-mill && cd my-mill && millrace report")
  .action(async (dir: string) => {
    code = (await import("./start.js")).start(dir);
  });

const mill = (command: Command): Command =>
  command
    .option("--plant <file>", "the plant file", "plant.yaml")
    .option("--from <day>", "first day of the period", day)
    .option("--to <day>", "last day of the period", day)
    .option(
      "--as-of <day>",
      "date of the report; factor values entered later are ignored",
      day,
      today,
    )
    .option("--max-aside <n>", "most rows set aside, as 12 or 5%; more ends with exit code 4");

mill(program.command("check"))
  .description("read and judge the log: rows read = accepted + corrected + set aside, by reason")
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option("--out <dir>", "folder for setaside.csv", "out")
  .option("--json", "print the counts and problems as data")
  .addHelpText(
    "after",
    "\nExamples:\n  millrace check\n  millrace check january.csv february.csv --max-aside 1%\n  millrace check --json > counts.json",
  )
  .action(async (logs: string[], options: CheckOptions) => {
    code = await (await import("./check.js")).check(logs, options);
  });

const scope = (command: Command): Command =>
  mill(command)
    .option("--client <name>", "only this client's lots; no other client appears anywhere")
    .option("--site <name>", "only this site's lots")
    .option("--order <id>", "only this order's lots")
    .option(
      "--per <unit>",
      "reference unit: m2, kg, m or total",
      oneOf("m2", "kg", "m", "total"),
      "m2",
    )
    .option("--draws <n>", "number of draws", whole(100, 1000000), 10000)
    .option("--seed <n>", "seed of the draws", whole(0, 4294967295), 1);

scope(program.command("report"))
  .description("write the report of both routes as HTML, PDF and JSON")
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option("--out <dir>", "folder for the reports", "out")
  .option("--formats <list>", "html, pdf, json", formats, ["html", "pdf", "json"])
  .option("--json", "print what was written as data")
  .addHelpText(
    "after",
    '\nExamples:\n  millrace report\n  millrace report --client "Client Alder" --from 2026-01-01 --to 2026-06-30\n  millrace report --per kg --formats json --out figures',
  )
  .action(async (logs: string[], options: ReportOptions) => {
    code = await (await import("./report.js")).report(logs, options);
  });

scope(program.command("explain"))
  .description(
    "print how a figure came about: indicator, step, term, amount × rate, settings, sources, rows",
  )
  .argument("<indicator>", "water, cod, energy, electricity, co2-location, …")
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option("--route <name>", "only lots that took this route")
  .option("--terms <n>", "number of terms shown for each arm", whole(1, 1000), 8)
  .option("--json", "print as data")
  .addHelpText(
    "after",
    '\nExamples:\n  millrace explain water\n  millrace explain energy --client "Client Alder" --terms 20\n  millrace explain cod --json',
  )
  .action(async (indicator: string, logs: string[], options: ExplainOptions) => {
    code = await (await import("./explain.js")).explain(indicator, logs, options);
  });

program
  .command("factors")
  .description(
    "list factors in force: value, doubt, place, year, source, quality, overruled or not",
  )
  .argument("[text]", "part of an id or of the words")
  .option("--plant <file>", "plant file whose folder may hold own factors", "plant.yaml")
  .option("--as-of <day>", "date of the report", day, today)
  .option("--json", "print as data")
  .addHelpText(
    "after",
    "\nExamples:\n  millrace factors stenter\n  millrace factors grid.PRT --json",
  )
  .action(async (text: string | undefined, options: FactorsOptions) => {
    code = (await import("./factors.js")).factors(text, options);
  });

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) {
    code = error.exitCode === 0 ? EXIT.done : EXIT.usage;
  } else if (error instanceof RangeError && error.message.startsWith("--")) {
    process.stderr.write(`error: ${error.message}\n`);
    code = EXIT.usage;
  } else if (isSystemFault(error)) {
    process.stderr.write(
      `refused: ${error.path === undefined ? "" : `${error.path}: `}the system says ${error.code ?? ""} (${error.syscall ?? ""}). Check that the path names a file where a file is meant, and a folder that may be written to where a folder is meant.\n`,
    );
    code = EXIT.refused;
  } else {
    process.stderr.write(
      `This is a fault of the tool, not of your files. Please report it with this text:\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    code = EXIT.bug;
  }
}
process.exitCode = code;
