import type { Token } from "markdown-it";
import type { Run } from "../document.js";
import { OWN } from "./markdown.js";
import type { Carried } from "./marks.js";
import { firstLine, hasPrivateUse, pieces, plain } from "./marks.js";

type Style = "bold" | "italic" | "code";

/** What is needed to turn inline tokens into runs. */
export interface RunSource {
  /** Values by the place that their marks name. */
  readonly carried: readonly Carried[];
  /** Ids of the notes that may be referred to. */
  readonly notes: ReadonlySet<string>;
  /** Raises a fault; is given the line of the template, if one was passed in the text. */
  readonly fail: (complaint: string, line: number | undefined) => never;
}

const STYLES: Readonly<Record<string, Style | undefined>> = {
  strong_open: "bold",
  em_open: "italic",
};

/**
 * Turns the tokens of a paragraph, heading, item or cell into runs.
 *
 * @param tokens - children of an inline token
 * @param source - values, notes and the way to complain
 * @returns runs; neighbours of one style are one run
 */
export function runsOf(tokens: readonly Token[], source: RunSource): readonly Run[] {
  const runs: Run[] = [];
  const styles: Style[] = [];
  let line: number | undefined;
  const fail = (complaint: string): never => source.fail(complaint, line);
  const add = (text: string, style: Style | undefined): void => {
    for (const piece of pieces(text, source.carried)) {
      if (piece.kind === "line") line = piece.line;
      else if (piece.kind === "figure") {
        runs.push({ kind: "figure-ref", figure: piece.figure, text: piece.text });
      } else append(runs, piece.text, style);
    }
  };
  for (let index = 0; index < tokens.length; index += 1) {
    const token = tokens[index]!;
    switch (token.type) {
      case "text":
      case "text_special":
        add(token.content, styles.at(-1));
        break;
      case "code_inline":
        add(token.content, "code");
        break;
      case "softbreak":
        append(runs, " ", styles.at(-1));
        break;
      case "strong_open":
      case "em_open":
        if (styles.length > 0) fail("bold and italic cannot be set at once");
        styles.push(STYLES[token.type] ?? "bold");
        break;
      case "strong_close":
      case "em_close":
        styles.pop();
        break;
      case "link_open": {
        const end = tokens.findIndex((other, at) => at > index && other.type === "link_close");
        const inner = tokens.slice(index + 1, end);
        line = firstLine(inner.map(({ content }) => content).join("")) ?? line;
        runs.push(link(token, inner, source, fail));
        index = end;
        break;
      }
      case OWN.noteRef:
        if (!source.notes.has(token.info)) fail(`there is no note "${token.info}"`);
        runs.push({ kind: "note-ref", note: token.info });
        break;
      default:
        fail(unsupported(token));
    }
  }
  return trimmed(runs);
}

function append(runs: Run[], text: string, style: Style | undefined): void {
  const last = runs.at(-1);
  if (last?.kind === "text" && last.style === style) runs.pop();
  else if (text === "") return;
  const before = last?.kind === "text" && last.style === style ? last.text : "";
  const whole = before + text;
  runs.push(
    style === undefined ? { kind: "text", text: whole } : { kind: "text", text: whole, style },
  );
}

// A blank at either end comes from a value that printed nothing.
function trimmed(runs: readonly Run[]): readonly Run[] {
  const cut = (run: Run, index: number): Run => {
    if (run.kind !== "text" || run.style === "code") return run;
    const start = index === 0 ? run.text.replace(/^ +/, "") : run.text;
    return { ...run, text: index === runs.length - 1 ? start.replace(/ +$/, "") : start };
  };
  return runs.map(cut).filter((run) => run.kind !== "text" || run.text !== "");
}

function link(
  token: Token,
  inner: readonly Token[],
  source: RunSource,
  fail: (complaint: string) => never,
): Run {
  const href = String(token.attrGet("href") ?? "");
  if (hasPrivateUse(safelyDecoded(href))) fail("a value may not stand in the address of a link");
  if (!/^https:\/\/[^/?#]|^#[\w.-]+$/.test(href)) {
    fail(`the link to "${href}" is not allowed; links lead to https:// or to #ID in this report`);
  }
  const strange = inner.find(({ type }) => !["text", "text_special", "softbreak"].includes(type));
  if (strange) fail(`${unsupported(strange)} inside a link`);
  const text = inner.map(({ type, content }) => (type === "softbreak" ? " " : content)).join("");
  if (pieces(text, source.carried).some(({ kind }) => kind === "figure")) {
    fail("a figure may not stand inside a link");
  }
  return { kind: "link", text: plain(text, source.carried), href };
}

function safelyDecoded(href: string): string {
  try {
    return decodeURIComponent(href);
  } catch {
    return href;
  }
}

function unsupported(token: Token): string {
  const name = token.type.replace(/_(open|close|inline)$/, "");
  return `"${name}" cannot be printed in a report`;
}
