/**
 * The claims sheet: what may be said, under which conditions, and what stands in the way.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import type { ClaimVerdict, Verdict } from "../../compare/claims/assess.js";
import type { PolicyChange } from "../../compare/claims/policy.js";
import type { Block, Cell, Run } from "../document.js";
import { textCell } from "../figure-desk.js";
import { formatDate, formatInterval, formatNumber, formatPercent } from "../format.js";
import { gateWords, GATE_NAMES } from "./claim-words.js";
import type { ReportDesk } from "./desk.js";

/** Claims of a report. */
export interface ClaimsInput {
  /** Verdicts, in the order asked for. */
  readonly verdicts: readonly ClaimVerdict[];
  /** Name and version of the policy. */
  readonly policy: string;
  /** Least difference worth naming in the modified test; the usual one when absent. [standard deviations] */
  readonly least?: number;
  /** Thresholds the mill set otherwise. */
  readonly changes: readonly PolicyChange[];
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  supported: "supported",
  conditions: "supported with conditions",
  "not-supported": "not supported",
};

/**
 * The claims sheet.
 *
 * @param desk - the report in the making
 * @returns a table of verdicts, a box for each claim, and what the policy changes
 */
export function claimBlocks(desk: ReportDesk): readonly Block[] {
  const { claims } = desk.input;
  if (claims === undefined || claims.verdicts.length === 0)
    return [paragraph(words("No claim was judged."))];
  return [
    {
      kind: "table",
      id: "claims",
      caption: `Claims by the policy ${claims.policy}. A cautious value is the lower end of the 95 % interval, rounded down.`,
      head: ["Claim", "Verdict", "Cautious value", "Holds until"].map((text) => textCell(text)),
      rows: claims.verdicts.map((verdict) => [
        textCell(verdict.kind.words, true),
        textCell(VERDICTS[verdict.verdict]),
        textCell(valueOf(verdict)),
        textCell(verdict.verdict === "not-supported" ? "–" : formatDate(verdict.expires)),
      ]),
      widths: [4, 3, 2, 2],
    },
    ...looser(claims.changes),
    ...claims.verdicts.map((verdict) => claimBox(desk, verdict, claims.policy)),
  ];
}

/**
 * One sentence on the claims, for page one.
 *
 * @param claims - claims of the report
 * @returns the sentence
 */
export function claimsSentence(claims: ClaimsInput | undefined): string {
  if (claims === undefined || claims.verdicts.length === 0) {
    return "none was judged, and no sentence here is a claim.";
  }
  const { verdicts } = claims;
  const count = (of: Verdict): number => verdicts.filter(({ verdict }) => verdict === of).length;
  return `${verdicts.length} judged, ${count("supported")} supported, ${count("conditions")} with conditions, ${count("not-supported")} not. No other sentence is a claim.`;
}

function valueOf({ verdict, cautious }: ClaimVerdict): string {
  return verdict === "not-supported" || cautious === undefined ? "–" : formatPercent(cautious);
}

function looser(changes: readonly PolicyChange[]): readonly Block[] {
  if (changes.length === 0) return [];
  const listed = changes.map(({ key, shipped, own, looser: easier }) => ({
    text: `${key} is ${own} instead of ${shipped}${easier ? ", which lets claims pass more easily" : ", which is stricter"}.`,
  }));
  return [
    {
      kind: "box",
      title: "Thresholds of the house",
      tone: changes.some((change) => change.looser) ? "caution" : "plain",
      blocks: [{ kind: "list", ordered: false, items: listed.map(({ text }) => words(text)) }],
    },
  ];
}

function claimBox(desk: ReportDesk, verdict: ClaimVerdict, policy: string): Block {
  const { kind, gates } = verdict;
  const blocks: Block[] = [];
  if (kind.refused !== undefined) {
    blocks.push(paragraph(words(`Never printed. ${kind.refused}`)));
  } else if (gates.length === 0) {
    blocks.push(
      paragraph(words(`A log of lots cannot support this claim. It would need: ${kind.needs}.`)),
    );
  } else {
    if (verdict.verdict !== "not-supported") blocks.push(paragraph(tuple(desk, verdict, policy)));
    blocks.push(gateTable(verdict));
    if (verdict.mend !== undefined) {
      const { mend } = gateWords(verdict.mend);
      if (mend !== "") blocks.push(paragraph(words(`What would help most: ${mend}.`)));
    }
  }
  return {
    kind: "box",
    title: `${capital(kind.words)}: ${VERDICTS[verdict.verdict]}`,
    tone: "plain",
    blocks,
  };
}

function gateTable({ kind, gates }: ClaimVerdict): Block {
  const outcome = { pass: "passes", condition: "condition", fail: "fails" } as const;
  return {
    kind: "table",
    id: `claim-${kind.id}`,
    caption: `Gates of the claim “${kind.words}”.`,
    head: ["Gate", "Answer", "What was found"].map((text) => textCell(text)),
    rows: gates.map((answer): readonly Cell[] => [
      textCell(GATE_NAMES[answer.gate], true),
      textCell(outcome[answer.outcome]),
      textCell(gateWords(answer).found),
    ]),
    widths: [2, 1, 5],
    behind: true,
  };
}

// The whole of what a claim must carry; no shorter form is ever made.
function tuple(desk: ReportDesk, verdict: ClaimVerdict, policy: string): readonly Run[] {
  const { input } = desk;
  const id = verdict.kind.indicator;
  const noted = id === undefined ? undefined : desk.compared(id);
  if (noted?.saving === undefined) return [];
  const sites = Object.keys(input.plant.sites).join(", ");
  const { saving } = noted;
  const range = noted.comparison.saving;
  const interval =
    range === undefined ? "" : formatInterval(100 * range.low, 100 * range.high, saving.digits);
  const conditions = verdict.gates
    .filter(({ outcome }) => outcome === "condition")
    .map((answer) => gateWords(answer).found);
  return [
    text(
      `At ${input.plant.house} (${sites}), ${formatDate(input.days[0])} to ${formatDate(input.days[1])}, per ${input.reference.words} of the same lots, gate to gate: pigment with heat fixation `,
    ),
    noted.pigment.run,
    text(` ${noted.unit} against `),
    noted.dye.run,
    text(` ${noted.unit} for dye with steam and wash, `),
    saving.run,
    text(
      ` % less (95 % interval ${interval} %); cautiously at least ${formatPercent(verdict.cautious ?? 0)}. ${coverage(desk, id)}`,
    ),
    text(
      conditions.length === 0
        ? "All gates are passed. "
        : `Under these conditions: ${conditions.join("; ")}. `,
    ),
    text(
      `Modelled and measured by millrace ${input.version}, factors ${input.factors.digest.slice(0, 12)}, policy ${policy}, ${formatNumber(input.account.draws.count, 0)} draws, seed ${input.seed}. Not independently verified. Holds until ${formatDate(verdict.expires)}, or until factors, machines, recipes or energy supply change.`,
    ),
  ];
}

// Of both arms, and what of it is a share of a meter of several machines.
function coverage(desk: ReportDesk, id: IndicatorId | undefined): string {
  const broken = BROKEN_DOWN.find((known) => known === id);
  if (broken === undefined) return "Nothing of it was measured. ";
  const [pigment, dye] = (["pigment", "dye"] as const).map((arm) => {
    const { measured, allocated } = desk.shares(broken, arm);
    const shared = allocated > 0.005 ? `, and ${formatPercent(allocated)} shared out` : "";
    return `${formatPercent(measured)} of ${arm}${shared}`;
  });
  return `Measured by meters of the machines: ${pigment ?? ""}; ${dye ?? ""}. `;
}

function capital(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

function text(words: string): Run {
  return { kind: "text", text: words };
}

function words(said: string): readonly Run[] {
  return [text(said)];
}

function paragraph(runs: readonly Run[]): Block {
  return { kind: "paragraph", runs };
}
