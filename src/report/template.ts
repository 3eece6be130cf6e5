/**
 * Report texts: templates with values, read as a small part of Markdown, turned into blocks.
 */

import type { Block } from "./document.js";
import { blocksOf } from "./template/blocks.js";
import type { TemplateValues } from "./template/liquid.js";
import { fillValues } from "./template/liquid.js";
import { templateMarkdown } from "./template/markdown.js";

export type { FigureValue, TemplateValues } from "./template/liquid.js";

const reader = templateMarkdown();

/**
 * Turns a template into blocks. Values come out as they went in: none can open a table, link, heading
 * or directive. A value that is a figure comes out as a reference to it.
 *
 * @param source - the template: Liquid values and conditions in Markdown with directives
 * @param name - its name, for messages
 * @param values - what it may print
 * @param blocks - blocks made by code, by the id under which `::place ID` finds them
 * @returns blocks in order
 * @throws {@link TemplateError} with name and line, when a value, filter, tag, directive, id or kind
 *   of Markdown is unknown or not allowed
 */
export function renderTemplate(
  source: string,
  name: string,
  values: TemplateValues,
  blocks: Readonly<Record<string, readonly Block[]>>,
): readonly Block[] {
  const { text, carried } = fillValues(source, name, values);
  return blocksOf(reader.parse(text, {}), { name, text, carried, placed: blocks });
}
