/**
 * The print house as the model uses it: checked, with every route's steps tied to machines.
 */

import type { DyeClass, RouteStep, Workflow } from "./shipped-routes.js";
import type { GivenNumber, PlantText, SiteText } from "./schema.js";

/** A step of a route tied to its machine. */
export interface PlantStep extends RouteStep {
  /** Machine, by its name; empty for steps that need none. */
  readonly machine: string;
  /** Settings of the route for this step, by short name. */
  readonly settings: Readonly<Record<string, GivenNumber>>;
  /** Choices of route and machine for this step, by short name. */
  readonly choices: Readonly<Record<string, string>>;
}

/** A route tied to its machines. */
export interface PlantRoute {
  /** Its name, as logged. */
  readonly name: string;
  /** Workflow it belongs to. */
  readonly workflow: Workflow;
  /** Dye class of a dye route. */
  readonly dye: DyeClass | undefined;
  /** In plain words. */
  readonly words: string;
  /** Steps in order. */
  readonly steps: readonly PlantStep[];
  /** Printed width; the cloth's when absent. [m] */
  readonly printWidth: number | undefined;
}

/** The print house. */
export interface Plant {
  /** Its name. */
  readonly house: string;
  /** Set of global warming potentials. */
  readonly gwp: "AR5" | "AR6";
  /** Sites by name. */
  readonly sites: Readonly<Record<string, SiteText>>;
  /** Routes by name. */
  readonly routes: Readonly<Record<string, PlantRoute>>;
  /** Counterpart of a route, where the plant file names one. */
  readonly counterparts: Readonly<Record<string, string>>;
  /** The rest of the file as written. */
  readonly text: PlantText;
}
