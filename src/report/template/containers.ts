/**
 * What a template puts between `:::NAME` and `:::`.
 */

import type { Block } from "../document.js";

const NAMES = ["box", "caution", "lead", "small", "table"] as const;

/** Name of a container. */
export type ContainerName = (typeof NAMES)[number];

/** A container that has been opened. */
export interface Container {
  /** Which. */
  readonly name: ContainerName;
  /** What stands behind its name: a title, or an id and a caption. */
  readonly argument: string;
  /** Line of the template that opened it. */
  readonly line: number;
  /** Blocks inside, in order. */
  readonly blocks: Block[];
}

/**
 * Tells whether a word names a container.
 *
 * @param word - word behind the colons
 * @returns true when it does
 */
export function isContainer(word: string): word is ContainerName {
  return (NAMES as readonly string[]).includes(word);
}

/**
 * Turns a container that was closed into the blocks it stands for.
 *
 * @param container - the container
 * @param fail - raises a fault at the container
 * @returns blocks for the text around it
 */
export function closed(container: Container, fail: (complaint: string) => never): readonly Block[] {
  const { name, argument, blocks } = container;
  switch (name) {
    case "box":
    case "caution":
      if (argument === "") fail(`:::${name} needs a title`);
      if (blocks.some(({ kind }) => kind === "box")) fail("a box may not stand in a box");
      return [{ kind: "box", title: argument, tone: name === "box" ? "plain" : "caution", blocks }];
    case "lead":
    case "small":
      if (argument !== "") fail(`:::${name} takes nothing behind it`);
      return blocks.map((block) =>
        block.kind === "paragraph"
          ? { ...block, tone: name }
          : fail(`:::${name} holds paragraphs only`),
      );
    case "table": {
      const [, id = "", caption = ""] = /^([\w.-]+)\s+(\S.*)$/.exec(argument) ?? [];
      if (id === "") fail(":::table needs an id and a caption");
      const [table, ...more] = blocks;
      if (table?.kind !== "table" || more.length > 0) {
        return fail(":::table holds one table and nothing else");
      }
      return [{ ...table, id, caption }];
    }
  }
}
