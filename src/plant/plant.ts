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
  /** What-ifs of the file, in its order; absent without any. */
  readonly scenarios?: readonly Scenario[];
}

/** A what-if: the print house as it is not. */
export interface Scenario {
  /** Its name. */
  readonly name: string;
  /** What it is about, in the words of the mill; empty when it says nothing. */
  readonly note: string;
  /** Whether it was asked for on the command line. */
  readonly asked: boolean;
  /** What differs from the mill, line by line. */
  readonly differs: readonly string[];
  /** The house with what differs, on every day. */
  readonly plant: Plant;
  /** Route that lots take instead of another. */
  readonly instead: Readonly<Record<string, string>>;
  /** Rejected area as a multiple of what was logged, by workflow. */
  readonly rejects: Readonly<Record<Workflow, number>>;
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
