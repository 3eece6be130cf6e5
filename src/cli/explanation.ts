/**
 * An explanation in print.
 */

import type { DoubtShare } from "../compare/doubt-shares.js";
import type { Index } from "../numbers/sobol.js";
import { formatNumber, formatPercent } from "../report/format.js";
import type { Explanation } from "./explain.js";
import { out } from "./say.js";

/** Share of a total below which what was left out is not worth a line. */
const REST = 0.005;

/**
 * Prints an explanation: the figure of each route, its terms, what they read, and the rows behind them.
 *
 * @param explained - the explanation
 */
export function printExplanation(explained: Explanation): void {
  out(`${explained.words} (${explained.indicator}), ${explained.unit}`);
  for (const arm of explained.arms) printArm(arm, explained.totalUnit);
  const lines = explained.arms.flatMap(({ terms }) => terms);
  if (lines.some(({ amount }) => /[·[]/.test(amount)))
    out(
      "\nAn amount is a sum over rows: a·b over those that log b, times b; a[no b] over those that do not.",
    );
  const { saving } = explained;
  if (saving !== null)
    out(
      `\nshare saved by pigment: ${formatPercent(saving.median)} (95 % interval ${formatPercent(saving.low)} to ${formatPercent(saving.high)})`,
    );
  printScenarios(explained);
  if (explained.settings.length > 0) out("\nSettings and factors read:");
  for (const setting of explained.settings) {
    const range =
      setting.low === setting.high
        ? "no doubt"
        : `${digits(setting.low)} to ${digits(setting.high)}`;
    out(
      `  ${setting.stream} = ${digits(setting.median)}${setting.unit === "1" ? "" : ` ${setting.unit}`} (${range}; ${setting.given})`,
    );
    out(`      ${setting.words}; ${setting.source}`);
  }
  printRows(explained);
}

function printScenarios({ scenarios }: Explanation): void {
  if (scenarios.length > 0) out("\nWhat if (not the mill):");
  for (const { name, differs, pigment, dye, saving, change } of scenarios) {
    out(`  ${name}: ${differs.length === 0 ? "nothing differs" : differs.join("; ")}`);
    if (pigment !== undefined && dye !== undefined)
      out(`      pigment ${digits(pigment.median)}, dye ${digits(dye.median)}`);
    if (saving !== null && change !== null)
      out(
        `      share saved ${formatPercent(saving.median)} (${formatPercent(saving.low)} to ${formatPercent(saving.high)}); ${
          change.low === 0 && change.high === 0
            ? "no change"
            : `change ${digits(100 * change.median)} points (${digits(100 * change.low)} to ${digits(100 * change.high)})`
        }`,
      );
  }
}

function printArm(
  { arm, total, terms, evidence }: Explanation["arms"][number],
  totalUnit: string,
): void {
  if (total !== undefined)
    out(
      `\n${arm} route: ${digits(total.median)} (95 % interval ${digits(total.low)} to ${digits(total.high)})`,
    );
  const known = evidence.filter(({ share }) => share >= REST);
  if (known.length > 0)
    out(
      `   known by: ${known.map(({ tier, words, share }) => `${words} (${tier}) ${formatPercent(share)}`).join("; ")}`,
    );
  for (const line of terms) {
    const part = line.part === undefined ? "" : `, ${line.part}`;
    out(`${percent(line.share)}  ${line.route} · ${line.step} · ${line.flow}${part}`);
    const amount = line.amount === line.unit ? line.unit : `${line.unit} of ${line.amount}`;
    const range =
      line.low === line.high ? "no doubt" : `${digits(line.low)} to ${digits(line.high)}`;
    out(
      `         ${line.unit === "lots" ? whole(line.sum) : digits(line.sum)} ${amount} × ${digits(line.median)} ${totalUnit} (${range})`,
    );
    out(`         rate: ${line.rate === "one" ? "none, as the log says all of it" : line.rate}`);
  }
  const rest = terms.reduce((left, { share }) => left - share, 1);
  if (terms.length > 0 && Math.abs(rest) >= REST)
    out(`${percent(rest)}  all other terms; --terms shows more`);
}

function printRows({ arms, rows, rowCount, totalUnit, per, unit, files }: Explanation): void {
  out(`\nRows behind it: ${whole(rowCount)}, each charged to both routes; means over the draws.`);
  for (const row of rows)
    out(
      `  ${row.file}, line ${row.line}: lot ${row.lot}, ${row.date}, ${row.route}: pigment ${digits(row.pigment)}, dye ${digits(row.dye)} ${totalUnit}`,
    );
  if (rowCount > rows.length)
    out(
      `  and ${whole(rowCount - rows.length)} more that add less on the route they took; --rows shows more`,
    );
  for (const { arm, sum, units } of arms)
    out(
      `  all ${whole(rowCount)} on the ${arm} route: ${digits(sum)} ${totalUnit}${unit === totalUnit ? "" : `, over ${whole(units)} ${per} = ${digits(sum / units)}`}`,
    );
  for (const file of files)
    out(
      `file ${file.name}: ${file.rows} rows, ${file.setAside > 0 ? `${file.setAside} of them set aside, ` : ""}SHA-256 ${file.sha256.slice(0, 16)}`,
    );
}

function whole(count: number): string {
  return formatNumber(count, 0);
}

function percent(share: number): string {
  return formatPercent(share).padStart(7);
}

/**
 * A number in print, to four digits or so.
 *
 * @param value - the number
 * @returns its text
 */
export function digits(value: number): string {
  if (value === 0) return "0";
  return formatNumber(
    value,
    Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(Math.abs(value) || 1)))),
  );
}

/**
 * Prints what the doubt rests on: Sobol' indices of the share saved, with their sampling error.
 *
 * @param shares - indices by factor
 */
export function printDoubt(shares: readonly DoubtShare[]): void {
  out("");
  out("What the doubt of the share saved rests on, Sobol' indices in percent of its variance:");
  out("   alone          in all         factors");
  for (const { factors, words, of } of shares) {
    const { first, total } = of.saving;
    const percent = ({ value, error }: Index): string =>
      `${(100 * value).toFixed(0).padStart(4)} ± ${(200 * error).toFixed(0)}`.padEnd(15);
    out(`${percent(first)}${percent(total)}${factors.join(", ")}`);
    out(`${" ".repeat(30)}${words}`);
  }
  out("± is two standard errors of the estimate. Factors on one line are drawn together.");
}
