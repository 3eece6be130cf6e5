/**
 * Fills the values of a template: a small, strict part of the Liquid language.
 */

import { Liquid, LiquidError, Tag } from "liquidjs";
import type { Carried } from "./marks.js";
import { hasPrivateUse, markLines, tidied, valueMark } from "./marks.js";
import { TemplateError } from "./template-error.js";

/** A number of the report as a template gets it: it can be printed and nothing else. */
export interface FigureValue {
  /** Id in the list of figures. */
  readonly figure: string;
  /** The number as printed, with its unit where the sentence does not name it. */
  readonly text: string;
}

/**
 * What a template may be given. Numbers and truth values decide in `if` and `case` and are never
 * printed; a number that is printed comes as a figure. `null` is known to be empty and prints as
 * nothing, where an unknown name is a fault.
 */
export type TemplateValue =
  string | number | boolean | null | FigureValue | readonly TemplateValue[] | TemplateValues;

/** Values by name. */
export interface TemplateValues {
  readonly [name: string]: TemplateValue;
}

/** A template with its values in marks. */
export interface Filled {
  /** Markdown with marks. */
  readonly text: string;
  /** Values by the place that their marks name. */
  readonly carried: readonly Carried[];
}

const TAGS = new Set([
  ...["assign", "break", "case", "comment", "continue", "for", "if", "raw", "unless", "#"],
]);

// Filters that read no clock, draw no lot and write no markup.
const FILTERS = new Set([
  ...["capitalize", "compact", "concat", "default", "downcase", "first", "join", "last", "map"],
  ...["reverse", "size", "slice", "sort", "split", "strip", "uniq", "upcase", "where"],
]);

/** Steps and letters after which a template is taken for endless. */
const LIMITS = { parseLimit: 2_000_000, memoryLimit: 20_000_000 } as const;

/** A figure inside the engine, which can look into it neither by name nor by filter. */
class Opaque {
  readonly #value: FigureValue;

  constructor(value: FigureValue) {
    this.#value = value;
  }

  reveal(): FigureValue {
    return this.#value;
  }

  toString(): never {
    throw new Error("a figure may only be printed: no filter, no joining");
  }
}

/**
 * Fills a template.
 *
 * @param source - the template
 * @param name - its name, for messages
 * @param values - what it may print
 * @returns Markdown in which every value is a mark
 * @throws {@link TemplateError} when a name, filter or tag is unknown or not allowed, or when a bare
 *   number, truth value or list would be printed
 */
export function fillValues(source: string, name: string, values: TemplateValues): Filled {
  const lines = source.split(/\r\n?|\n/);
  const tainted = lines.findIndex(hasPrivateUse);
  if (tainted >= 0) {
    throw new TemplateError(name, tainted + 1, "private-use letters have no place in a template");
  }
  const carried: Carried[] = [];
  const engine = strictEngine((value) => {
    const taken = carry(value);
    if (taken.kind === "text" && taken.text === "") return "";
    carried.push(taken);
    return valueMark(carried.length - 1);
  });
  try {
    const text: unknown = engine.parseAndRenderSync(markLines(lines.join("\n")), enclosed(values));
    return { text: String(text), carried };
  } catch (fault) {
    if (!LiquidError.is(fault)) throw fault;
    const [line = 0] = fault.token.getPosition();
    throw new TemplateError(name, line, complaint(fault));
  }
}

function complaint(fault: LiquidError): string {
  const words = (fault.originalError ?? fault).message;
  return words.replace(/, (file|line|col):.*$/s, "").replace(/\p{Co}/gu, "");
}

function strictEngine(print: (value: unknown) => string): Liquid {
  const engine = new Liquid({
    strictVariables: true,
    strictFilters: true,
    ownPropertyOnly: true,
    outputEscape: print,
    ...LIMITS,
  });
  for (const name of Object.keys(engine.tags).filter((tag) => !TAGS.has(tag))) {
    engine.registerTag(
      name,
      class extends Tag {
        constructor(...parts: ConstructorParameters<typeof Tag>) {
          super(...parts);
          throw new Error(`the tag "${name}" is not allowed in a report template`);
        }

        override render(): string {
          return "";
        }
      },
    );
  }
  for (const [name, filter] of Object.entries(engine.filters)) {
    engine.unregisterFilter(name);
    if (FILTERS.has(name) && typeof filter === "function") {
      engine.registerFilter(name, function (value: unknown, ...rest: unknown[]): unknown {
        if (value instanceof Opaque && name !== "default") return value.toString();
        return filter.call(this, value, ...rest);
      });
    }
  }
  return engine;
}

function carry(value: unknown): Carried {
  if (value instanceof Opaque) return { kind: "figure", ...value.reveal() };
  if (value === null) return { kind: "text", text: "" };
  if (typeof value === "string") return { kind: "text", text: tidied(value) };
  if (typeof value === "number") {
    throw new Error(`the bare number ${value} may not be printed; give it as a figure`);
  }
  const kind = typeof value === "boolean" ? "a truth value" : "a list or group of values";
  throw new Error(`${kind} may not be printed; use if, for or join`);
}

function isFigure(value: object): value is FigureValue {
  return "figure" in value && "text" in value && Object.keys(value).length === 2;
}

// Own copies without prototype: nothing but what was given can be named.
function enclosed(values: TemplateValues): Record<string, unknown> {
  const copy = Object.create(null) as Record<string, unknown>;
  for (const [name, value] of Object.entries(values)) copy[name] = enclose(value);
  return copy;
}

function enclose(value: TemplateValue): unknown {
  if (value === null || typeof value !== "object") return value;
  if (isList(value)) return value.map(enclose);
  if (!isFigure(value)) return enclosed(value);
  return new Opaque({ figure: value.figure, text: tidied(value.text) });
}

function isList(value: object): value is readonly TemplateValue[] {
  return Array.isArray(value);
}
