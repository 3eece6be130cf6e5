#!/usr/bin/env node
/**
 * The command line. Commands are loaded when they are called, so that `--help` answers at once.
 */

import { Command, CommanderError } from "commander";
import { day, mostAside, nameOf, oneOf, settingOf, someOf, whole, WrongWord } from "./arguments.js";
import type { CheckOptions } from "./check.js";
import { EXIT } from "./exit.js";
import type { ExplainOptions } from "./explain.js";
import type { FactorsOptions } from "./factors.js";
import type { InvestOptions } from "./invest.js";
import { pathProblem } from "./paths.js";
import type { Problem } from "../problems/problem.js";
import { LANGUAGES } from "../report/wording/language.js";
import type { ReportOptions } from "./report.js";
import { data, err, progress, refuse } from "./say.js";
import { addSupplierCommands } from "./supplier-commands.js";
import type { WordingOptions } from "./wording.js";

// Where data was asked for, every refusal is data too, also one that comes before options are read.
const json = process.argv.includes("--json");

const today = new Date().toISOString().slice(0, 10);

const program = new Command("millrace")
  .description(
    "Works out what printed fabric lots took in water, energy, emissions, effluent and money\non the route they went and on the route they could have gone, with the doubt of each figure.",
  )
  .version("0.1.0")
  .exitOverride()
  .configureOutput({
    writeErr: (text) => {
      if (!json) process.stderr.write(text);
    },
  })
  .showHelpAfterError("(add --help for the options of this command)");

/** Indicators that `explain` knows, in the order of the report. */
const INDICATORS =
  "water, evaporated, discharged, consumed, cod, nitrogen, salt, energy, electricity, heat, co2-location, co2-market, scope-1, scope-2-location, scope-2-market, biogenic, carbon-to-air, formaldehyde, hours, labour, ink, paper or cost";

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
    .option("--from <day>", "first day of the period", day("--from"))
    .option("--to <day>", "last day of the period", day("--to"))
    .option(
      "--as-of <day>",
      "date of the report; factor values entered later are ignored",
      day("--as-of"),
      today,
    )
    .option(
      "--max-aside <n>",
      "most rows set aside, as 12 or 5%; more ends with exit code 4",
      mostAside,
    );

mill(program.command("check"))
  .description("read and judge the log: rows read = accepted + corrected + set aside, by reason")
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option("--out <dir>", "folder for setaside.csv", "out")
  .option("--wording <file>", "judge the words of a text of yours instead: text, Markdown or HTML")
  .option(
    "--language <list>",
    "languages of that text; guessed when left out",
    someOf("--language", ...LANGUAGES),
  )
  .option("--json", "print the counts and problems as data")
  .addHelpText(
    "after",
    "\nExamples:\n  millrace check\n  millrace check january.csv february.csv --max-aside 1%\n  millrace check --json > counts.json\n  millrace check --wording brochure.html --language de",
  )
  .action(async (logs: string[], options: CheckOptions & Partial<WordingOptions>) => {
    const { wording } = options;
    if (wording !== undefined && logs.length > 0)
      throw new WrongWord("--wording", "one text and no logs beside it", logs.join(" "));
    code =
      wording === undefined
        ? await (await import("./check.js")).check(logs, options)
        : (await import("./wording.js")).checkWording({ ...options, wording });
  });

const scope = (command: Command): Command =>
  mill(command)
    .option(
      "--client <name>",
      "only this client's lots; no other client appears anywhere",
      nameOf("--client", "a client"),
    )
    .option("--site <name>", "only this site's lots", nameOf("--site", "a site"))
    .option("--order <id>", "only this order's lots", nameOf("--order", "an order"))
    .option(
      "--per <unit>",
      "reference unit: m2, kg, m or total",
      oneOf("--per", "m2", "kg", "m", "total"),
      "m2",
    )
    .option(
      "--set <key=value>",
      "work out beside the mill what would be with this key of the plant file; may be repeated",
      settingOf("--set"),
    )
    .option("--draws <n>", "number of draws", whole("--draws", 100, 1000000), 10000)
    .option("--seed <n>", "seed of the draws", whole("--seed", 0, 4294967295), 1);

scope(program.command("report"))
  .description("write the report of both routes as HTML, PDF and JSON")
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option("--out <dir>", "folder for the reports", "out")
  .option(
    "--audience <who>",
    "internal, client (no costs, no what-ifs) or public (no names either; needs a review)",
    oneOf("--audience", "internal", "client", "public"),
    "internal",
  )
  .option("--formats <list>", "html, pdf, json", someOf("--formats", "html", "pdf", "json"), [
    "html",
    "pdf",
    "json",
  ])
  .option("--json", "print what was written as data")
  .addHelpText(
    "after",
    '\nExamples:\n  millrace report\n  millrace report --client "Client Alder" --from 2026-01-01 --to 2026-06-30\n  millrace report --per kg --formats json --out figures\n  millrace report --set sites.main.place=NOR --set sites.main.boiler.efficiency=0.92',
  )
  .action(async (logs: string[], options: ReportOptions) => {
    code = await (await import("./report.js")).report(logs, options);
  });

scope(program.command("explain"))
  .description(
    "print how a figure came about: indicator, step, term, amount × rate, settings, sources, rows",
  )
  .argument("<indicator>", INDICATORS)
  .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
  .option(
    "--route <name>",
    "only lots that took this route",
    nameOf("--route", "a route of the plant file"),
  )
  .option("--terms <n>", "number of terms shown for each arm", whole("--terms", 1, 1000), 8)
  .option("--rows <n>", "number of rows shown, largest first", whole("--rows", 0, 1000000), 8)
  .option("--doubt <n>", "what the doubt rests on: number of factors", whole("--doubt", 1, 100))
  .option("--break-evens", "value of every setting at which the median share saved is nothing")
  .option("--json", "print as data")
  .addHelpText(
    "after",
    '\nExamples:\n  millrace explain water\n  millrace explain energy --client "Client Alder" --terms 20\n  millrace explain cod --doubt 12 --json\n  millrace explain energy --break-evens',
  )
  .action(async (indicator: string, logs: string[], options: ExplainOptions) => {
    code = await (await import("./explain.js")).explain(indicator, logs, options);
  });

program
  .command("invest")
  .description(
    "write the report on a purchase: is it worth buying, and how wrong may the inputs be",
  )
  .argument("[file]", "the investment file; invest.yaml beside the plant file when none is named")
  .option("--plant <file>", "the plant file; log.csv beside it is read", "plant.yaml")
  .option("--from <day>", "first day of the log that the year rests on", day("--from"))
  .option("--to <day>", "last day of the log that the year rests on", day("--to"))
  .option("--out <dir>", "folder for the reports", "out")
  .option("--draws <n>", "number of draws", whole("--draws", 100, 100000), 2000)
  .option("--seed <n>", "seed of the draws", whole("--seed", 0, 4294967295), 1)
  .option("--as-of <day>", "date of the report", day("--as-of"), today)
  .option(
    "--formats <list>",
    "html, pdf, csv, json",
    someOf("--formats", "html", "pdf", "csv", "json"),
    ["html", "pdf", "csv", "json"],
  )
  .option("--json", "print what was written as data")
  .addHelpText(
    "after",
    "\nExamples:\n  millrace invest\n  millrace invest second-calender.yaml --out bank --formats pdf,csv\n  millrace invest --from 2025-07-01 --to 2026-06-30\n  millrace invest --draws 10000 --seed 7 --json",
  )
  .action(async (file: string | undefined, options: InvestOptions) => {
    code = await (await import("./invest.js")).invest(file, options);
  });

program
  .command("factors")
  .description(
    "list factors in force: value, doubt, place, year, source, quality, overruled or not",
  )
  .argument("[text]", "part of an id or of the words")
  .option("--plant <file>", "plant file whose folder may hold own factors", "plant.yaml")
  .option("--as-of <day>", "date of the report", day("--as-of"), today)
  .option("--dossier", "write a page with a section for each: spread, sources, scores, use, doubt")
  .option("--out <dir>", "folder for the dossier", "out")
  .option("--json", "print as data")
  .addHelpText(
    "after",
    "\nExamples:\n  millrace factors stenter\n  millrace factors grid.PRT --json\n  millrace factors wash-range --dossier",
  )
  .action(async (text: string | undefined, options: FactorsOptions) => {
    code = await (await import("./factors.js")).factors(text, options);
  });

addSupplierCommands(program, today, (ended) => {
  code = ended;
});

try {
  await program.parseAsync();
} catch (error) {
  progress("");
  if (error instanceof CommanderError) {
    code = error.exitCode === 0 ? EXIT.done : EXIT.usage;
    if (json && code === EXIT.usage) data({ problems: [misread(error.message)] });
  } else if (error instanceof WrongWord) {
    if (json) data({ problems: [wrongWord(error)] });
    else err(`error: ${error.message}`);
    code = EXIT.usage;
  } else if (isSystemFault(error)) {
    code = refuse([pathProblem(error)], json);
  } else {
    err(
      `This is a fault of the tool, not of your files. Please report it with this text:\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    );
    code = EXIT.bug;
  }
}
process.exitCode = code;

function misread(said: string): Problem {
  return {
    code: "command-line",
    severity: "refused",
    value: process.argv.slice(2).join(" "),
    expected: "a command and options that --help lists",
    remedy: `Mend this: ${said.replace(/^error: /, "").replaceAll("\n", " ")}.`,
  };
}

function wrongWord({ option, expected, given, hint }: WrongWord): Problem {
  return {
    code: "command-line",
    severity: "refused",
    value: given,
    expected: `${expected} after ${option}`,
    remedy: hint === "" ? "Add --help to the command for what it takes." : hint,
  };
}
