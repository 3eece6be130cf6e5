/**
 * Commands for evidence that travels: keys, seal, verify, suppliers.
 */

import type { Command } from "commander";
import { day, nameOf, someOf, whole } from "./arguments.js";
import type { SealOptions } from "./seal.js";
import type { SuppliersOptions } from "./suppliers.js";
import type { VerifyOptions } from "./verify.js";

/**
 * Adds the commands.
 *
 * @param program - the command line
 * @param today - day of today
 * @param ended - takes the exit code of a command
 */
export function addSupplierCommands(
  program: Command,
  today: string,
  ended: (code: number) => void,
): void {
  program
    .command("keys")
    .description("make a pair of keys to sign packs with; the private one is for its owner alone")
    .argument("<name>", "name of the files: NAME.private and NAME.public")
    .option("--json", "print what was written as data")
    .addHelpText("after", "\nExample:\n  millrace keys our-mill")
    .action(async (name: string, options: { readonly json?: boolean }) => {
      ended((await import("./keys.js")).keys(name, options));
    });
  program
    .command("seal")
    .description(
      "write a mill's evidence into one file that a buyer can check: sums, settings, factors,\nclaims; no customer, order, price or row",
    )
    .argument("[logs...]", "logs; log.csv beside the plant file when none is named")
    .option("--plant <file>", "the plant file", "plant.yaml")
    .option("--from <day>", "first day of the period", day("--from"))
    .option("--to <day>", "last day of the period", day("--to"))
    .option("--site <name>", "only this site's lots", nameOf("--site", "a site"))
    .option(
      "--as-of <day>",
      "day of the pack; factor values entered later are ignored",
      day("--as-of"),
      today,
    )
    .option("--alias <name>", "name of the supplier in the pack", nameOf("--alias", "a supplier"))
    .option("--key <file>", "private key to sign with, as `millrace keys` wrote it")
    .option("--previous <file>", "the pack before this one, to which it is chained")
    .option("--out <file>", "file to write", "mill.pack.json")
    .option("--draws <n>", "number of draws", whole("--draws", 100, 10000), 1000)
    .option("--seed <n>", "seed of the draws", whole("--seed", 0, 4294967295), 1)
    .option("--json", "print what was written as data")
    .addHelpText(
      "after",
      '\nExamples:\n  millrace seal --alias "Mill 7" --key our-mill.private\n  millrace seal --from 2026-01-01 --previous 2025.pack.json --out 2026.pack.json',
    )
    .action(async (logs: string[], options: SealOptions) => {
      ended(await (await import("./seal.js")).seal(logs, options));
    });
  program
    .command("verify")
    .description(
      "check packs: size, fields, canonical form, digest, signature, chain, sums, and every figure\nand claim worked out again",
    )
    .argument("<packs...>", "packs")
    .option("--key <file>", "public key that the packs must be signed with")
    .option("--json", "print the checks as data")
    .addHelpText(
      "after",
      "\nExamples:\n  millrace verify mill.pack.json\n  millrace verify mill.pack.json --key our-mill.public",
    )
    .action(async (packs: string[], options: VerifyOptions) => {
      ended((await import("./verify.js")).verify(packs, { today, ...options }));
    });
  program
    .command("suppliers")
    .description("set suppliers side by side at one mix: places as chances, questions to each")
    .argument("<suppliers...>", "packs, or folders with plant.yaml and log.csv")
    .option("--reference <file>", "mix of orders; the area of all suppliers when left out")
    .option("--key <file>", "public key that is known; the report says who signed with it")
    .option("--keys <dir>", "folder of public keys, each named by its file")
    .option(
      "--by <list>",
      "quantities, the main one first: water, energy, cod, co2-location",
      someOf("--by", "water", "energy", "cod", "co2-location"),
      ["water", "energy"],
    )
    .option("--as-of <day>", "day of the comparison", day("--as-of"), today)
    .option("--out <dir>", "folder for the reports", "out")
    .option("--formats <list>", "html, pdf, json", someOf("--formats", "html", "pdf", "json"), [
      "html",
      "pdf",
      "json",
    ])
    .option(
      "--draws <n>",
      "number of draws (default: 2000, or 1000 beyond twelve suppliers)",
      whole("--draws", 100, 100000),
    )
    .option("--seed <n>", "seed of the draws", whole("--seed", 0, 4294967295), 1)
    .option("--json", "print the outcome as data")
    .addHelpText(
      "after",
      "\nExamples:\n  millrace suppliers a.pack.json b.pack.json --reference mix.yaml\n  millrace suppliers ash/ brook.pack.json --by co2-location,energy",
    )
    .action(async (paths: string[], options: SuppliersOptions) => {
      ended(await (await import("./suppliers.js")).suppliers(paths, options));
    });
}
