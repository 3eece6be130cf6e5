/** Which kinds of machine serve which kinds of step. */

import { STEP_KINDS } from "../steps/kinds.js";

/** Kinds of machine that serve steps of other names than their own. */
const SERVES: Readonly<Record<string, readonly string[]>> = {
  stenter: ["stenter-dry", "stenter-cure"],
};

/** Kinds of step that need no machine. */
export const WITHOUT_MACHINE: ReadonlySet<string> = new Set(["stored"]);

/** Names that may stand as the kind of a machine. */
export const MACHINE_KINDS: readonly string[] = [
  ...Object.keys(STEP_KINDS),
  ...Object.keys(SERVES),
];

/**
 * Kinds of step that a kind of machine serves; a machine may be named by its step too.
 *
 * @param kind - kind of machine
 * @returns kinds of step, none when the kind is not known
 */
export function served(kind: string): readonly string[] {
  const steps = Object.hasOwn(SERVES, kind) ? SERVES[kind] : undefined;
  return [kind, ...(steps ?? [])].filter((step) => Object.hasOwn(STEP_KINDS, step));
}
