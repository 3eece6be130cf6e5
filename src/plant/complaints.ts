/**
 * What is wrong with a plant file, gathered while it is judged, each fault once, with its line and a remedy.
 */

import { nearest } from "../factors/nearest.js";
import { type KeyPath, problemAt, type YamlText } from "../factors/yaml-text.js";
import type { Problem } from "../problems/problem.js";
import { givenFault } from "./given.js";
import type { GivenNumber } from "./schema.js";

/** More names than this are not listed in a message. */
const LONGEST_LIST = 24;

/** Faults of a plant file, or of a change in it. */
export class Complaints {
  readonly #yaml: YamlText;
  readonly #above: KeyPath;
  readonly #before: ReadonlySet<string>;
  readonly #refused: KeyPath[];
  readonly #said = new Set<string>();
  readonly #problems: Problem[] = [];

  /**
   * @param yaml - the file, for lines
   * @param refused - places at fault already, of which nothing more is said
   * @param above - path of the part of the file that is judged
   * @param before - faults that were there already, as `said` gives them
   */
  constructor(
    yaml: YamlText,
    refused: readonly KeyPath[] = [],
    above: KeyPath = [],
    before: ReadonlySet<string> = new Set(),
  ) {
    this.#yaml = yaml;
    this.#refused = [...refused];
    this.#above = above;
    this.#before = before;
  }

  /**
   * Complaints about the file as of a change or under a scenario. Only what was no fault before it is noted,
   * at its key inside the change; the line is that of the change where the change does not name the key itself.
   *
   * @param above - where the change stands, as `["changes", 0]`
   * @returns the complaints, without any yet
   */
  under(above: readonly [string, string | number]): Complaints {
    const inside = this.#refused
      .filter((path) => path.length > 2 && path[0] === above[0] && path[1] === above[1])
      .map((path) => path.slice(2));
    return new Complaints(this.#yaml, [...this.#refused, ...inside], above, this.#said);
  }

  /**
   * All faults.
   *
   * @returns faults in the order of the file
   */
  get problems(): readonly Problem[] {
    return inOrder(this.#problems);
  }

  /**
   * Notes that nothing more is to be said of a place.
   *
   * @param path - where in the file
   */
  refuse(path: KeyPath): void {
    this.#refused.push(path);
  }

  /**
   * Whether a place, or something it stands in, was refused.
   *
   * @param path - where in the file
   * @returns true when what stands there cannot be relied on
   */
  refused(path: KeyPath): boolean {
    return this.#refused.some(
      (one) => one.length <= path.length && one.every((key, i) => key === path[i]),
    );
  }

  /**
   * Whether a place was refused, or anything in it.
   *
   * @param path - where in the file
   * @returns true when what stands there is not whole
   */
  refusedWithin(path: KeyPath): boolean {
    return (
      this.refused(path) || this.#refused.some((one) => path.every((key, i) => key === one[i]))
    );
  }

  /**
   * Keys right under a place that were refused.
   *
   * @param path - where in the file
   * @returns the keys
   */
  refusedUnder(path: KeyPath): readonly (string | number)[] {
    return this.#refused.flatMap((one) =>
      one.length === path.length + 1 && path.every((key, i) => key === one[i])
        ? (one.at(-1) ?? [])
        : [],
    );
  }

  /**
   * Notes a fault, unless its place was refused or the fault was there before.
   *
   * @param path - where in the file
   * @param code - stable code
   * @param value - what stands there
   * @param expected - what was expected, as a noun phrase
   * @param remedy - what to do, as a sentence
   */
  say(path: KeyPath, code: string, value: string, expected: string, remedy: string): void {
    if (this.refused(path)) return;
    const fault = JSON.stringify([path, code, value]);
    this.#said.add(fault);
    if (this.#before.has(fault)) return;
    const place = [...this.#above, ...path];
    this.#problems.push(problemAt(this.#yaml, place, { code, value, expected, remedy }));
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

/**
 * Puts faults in the order of the file.
 *
 * @param problems - faults of one file
 * @returns the same by line
 */
export function inOrder(problems: readonly Problem[]): readonly Problem[] {
  return [...problems].sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}
