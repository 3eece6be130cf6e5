/**
 * Settings that several kinds of step have in common, so that they read the same in every plant file.
 */

import type { SettingSpec } from "./step.js";

/** Share of the exhaust's heat won back. */
export const RECOVERY: SettingSpec = {
  words: "share of the exhaust's sensible heat given back to incoming air",
  unit: "1",
  limits: [0, 0.8],
  owner: "machine",
};

/** Loss of a hot machine to the hall. */
export const STANDING: SettingSpec = {
  words: "loss through casing and ducts while hot",
  unit: "kW",
  limits: [0, 500],
  owner: "machine",
};

/** Waiting hot. */
export const IDLE: SettingSpec = {
  words: "hours hot and waiting, warming up among them, per hour running",
  unit: "1",
  limits: [0, 3],
  owner: "machine",
};

/** Power while waiting hot. */
export const IDLE_POWER: SettingSpec = {
  words: "share of the running power drawn while waiting",
  unit: "1",
  limits: [0, 1],
  owner: "machine",
};

/** People at the machine. */
export const CREW: SettingSpec = {
  words: "people held per hour that the machine is held",
  unit: "1",
  limits: [0, 10],
  owner: "machine",
};

/** Set-up time. */
export const SETUP: SettingSpec = {
  words: "set-up before a lot",
  unit: "h/lot",
  limits: [0, 4],
  owner: "machine",
};

/** Moisture behind a dryer. */
export const MOISTURE_OUT: SettingSpec = {
  words: "moisture left on the cloth at the exit",
  unit: "kg/kg",
  limits: [0, 0.3],
  owner: "role",
};

/** Cloth temperature at fixation by dry heat. */
export const FIX_TEMPERATURE: SettingSpec = {
  words: "cloth temperature held for fixation",
  unit: "°C",
  limits: [100, 220],
  owner: "role",
};

/** Time at fixation temperature. */
export const DWELL: SettingSpec = {
  words: "time at fixation temperature",
  unit: "s",
  limits: [5, 1200],
  owner: "role",
};

/** Electric power; a kind may say more closely what draws it. */
export const POWER: SettingSpec = {
  words: "electric power while running",
  unit: "kW",
  limits: [0, 500],
  owner: "machine",
};

/** Speed of the cloth. */
export const SPEED: SettingSpec = {
  words: "cloth speed",
  unit: "m/min",
  limits: [1, 150],
  owner: "role",
};

/** What an exhaust fan can move. */
export const FAN: SettingSpec = {
  words: "dry air that the exhaust fan can move; 0 where nobody measured it",
  unit: "kg/h",
  limits: [0, 60000],
  owner: "machine",
};

/** Humidity of the exhaust, by which a dryer's air is ruled. */
export const EXHAUST_HUMIDITY: SettingSpec = {
  words: "water in the exhaust per dry air",
  unit: "kg/kg",
  limits: [0.03, 0.25],
  owner: "machine",
};
