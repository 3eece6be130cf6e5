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
  /** Sites by name, with those that a change adds. */
  readonly sites: Readonly<Record<string, SiteText>>;
  /** Routes by name, with those that a change adds. */
  readonly routes: Readonly<Record<string, PlantRoute>>;
  /** Counterpart of a route, where the plant file names one. */
  readonly counterparts: Readonly<Record<string, string>>;
  /** The rest of the file as written. */
  readonly text: PlantText;
  /** The house by date, oldest first, the file without its changes at the head; absent without changes. */
  readonly versions?: readonly DatedPlant[];
}

/** The print house from a day on. */
export interface DatedPlant {
  /** First day of the change; empty for the file without its changes. */
  readonly from: string;
  /** What changed, in the words of the mill; empty when it says nothing. */
  readonly note: string;
  /** The house with this change and all earlier ones. */
  readonly plant: Plant;
}
