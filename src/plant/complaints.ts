/**
 * What is wrong with a plant file, gathered while it is judged, each fault with its line and a remedy.
 */

import { nearest } from "../factors/nearest.js";
import { type KeyPath, problemAt, type YamlText } from "../factors/yaml-text.js";
import type { Problem } from "../problems/problem.js";
import { givenFault } from "./given.js";
import type { GivenNumber } from "./schema.js";

/** More names than this are not listed in a message. */
const LONGEST_LIST = 24;

/** Faults of one plant file. */
export class Complaints {
  readonly #yaml: YamlText;
  readonly #problems: Problem[] = [];

  /**
   * @param yaml - the file, for lines
   */
  constructor(yaml: YamlText) {
    this.#yaml = yaml;
  }

  /**
   * All faults.
   *
   * @returns faults in the order of the file
   */
  get problems(): readonly Problem[] {
    return [...this.#problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  }

  /**
   * Notes a fault.
   *
   * @param path - where in the file
   * @param code - stable code
   * @param value - what stands there
   * @param expected - what was expected, as a noun phrase
   * @param remedy - what to do, as a sentence
   */
  say(path: KeyPath, code: string, value: string, expected: string, remedy: string): void {
    this.#problems.push(problemAt(this.#yaml, path, { code, value, expected, remedy }));
  }

  /**
   * Notes a name that is not known, with the nearest one that is.
   *
   * @param path - where in the file
   * @param value - the name
   * @param what - what it should name
   * @param known - names that are known
   */
  unknown(path: KeyPath, value: string, what: string, known: readonly string[]): void {
    const near = nearest(value, known);
    const names = [...new Set(known)];
    const list = names.length > 0 && names.length <= LONGEST_LIST ? `: ${names.join(", ")}` : "";
    this.say(
      path,
      "unknown-name",
      value,
      what + list,
      near === undefined ? "Correct the name." : `Write ${near} if that was meant.`,
    );
  }

  /**
   * Notes a number that lies outside its limits, or whose ends do not fit it.
   *
   * @param path - where in the file
   * @param given - the number
   * @param limits - physical limits
   * @param unit - its unit, `1` for a bare ratio
   */
  number(path: KeyPath, given: GivenNumber, limits: readonly [number, number], unit: string): void {
    const fault = givenFault(given, limits);
    if (fault === undefined) return;
    const shown =
      typeof given === "number"
        ? String(given)
        : [given.low, given.value, given.high].filter((part) => part !== undefined).join(" … ");
    this.say(
      path,
      "setting-out-of-range",
      shown,
      unit === "1" ? fault : `${fault} in ${unit}`,
      "Correct the value or its unit.",
    );
  }
}
