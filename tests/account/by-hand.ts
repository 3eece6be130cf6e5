/**
 * The small mill of `exact-mill.ts` worked out lot by lot, in whole-lot sums on plain numbers: an
 * arithmetic of its own that shares nothing with the steps but steam tables and hall air.
 */

import { humidityRatio } from "../../src/physics/moist-air.js";
import {
  liquidEnthalpy,
  saturationTemperature,
  vapourEnthalpy,
  waterEnthalpy,
} from "../../src/physics/steam.js";

/** What is added up on the way of a lot. */
export interface Sums {
  /** Electricity at the machines. [kWh] */
  electricity: number;
  /** Gas of burners and oil heater. [MJ net] */
  gas: number;
  /** Heat behind closed coils. [MJ] */
  coil: number;
  /** Steam blown in. [kg] */
  steam: number;
  /** Water drawn from the works. [L] */
  process: number;
  /** Water to the drain. [L] */
  drained: number;
  /** Chemical oxygen demand. [g] */
  cod: number;
}

/** A lot as the hand sees it. */
export interface HandLot {
  readonly length: number;
  readonly width: number;
  readonly gsm: number;
  /** Shares of cotton and polyester. */
  readonly cotton: number;
  readonly polyester: number;
  readonly pickup: number;
  /** Ink on the cloth. [L] */
  readonly ink: number;
}

/** What is reported of an arm. */
export interface Figures {
  /** [L] */
  readonly water: number;
  /** [kWh] */
  readonly electricity: number;
  /** [kWh] */
  readonly heat: number;
  /** [kWh] */
  readonly energy: number;
  /** [g] */
  readonly cod: number;
}

const CW = 4.186;
const HALL = 25;
const SUPPLY = 15;
// 25 °C and 50 %: 0.0099 kg/kg.
const W1 = humidityRatio(25, 0.5, 1.01325);
// 8 bar: 2768 and 721 kJ/kg. Water of 90 and 15 °C: 378 and 64 kJ/kg.
const HG = vapourEnthalpy(8);
const HF = liquidEnthalpy(8);
const H90 = waterEnthalpy(8, 90);
const H15 = waterEnthalpy(8, 15);
// Steam tables: 99.974 °C at 1.01325 bar.
const BOILING = saturationTemperature(1.01325);

/** Cloth of a lot: M, m, m c, and the heats that bind water, all by whole lots. */
function clothOf(lot: HandLot) {
  const M = (lot.length * lot.width * lot.gsm) / 1000;
  const dryCotton = (M * lot.cotton) / 1.08;
  const dryPolyester = (M * lot.polyester) / 1.004;
  const m = dryCotton + dryPolyester;
  const mc = 1.3 * dryCotton + 1.1 * dryPolyester;
  const qw = (46 * dryCotton + 5 * dryPolyester) / m;
  const q0 = (1250 * dryCotton + 900 * dryPolyester) / m;
  const Xs = (2 * qw) / q0;
  const D = (X: number): number => (X < Xs ? qw * (1 - X / Xs) ** 2 : 0);
  return { M, m, mc, R: M / m - 1, D, area: lot.length * lot.width };
}

/** A lot from the store to the printed cloth, by the recipe of one arm. */
function prepared(lot: HandLot, codOfPad: number, codOfInk: number, sums: Sums): void {
  const { M, m, mc, R, D, area } = clothOf(lot);

  // Pad: 1 − s = 0.9 of pick-up and of 20 L left over, 60 L rinsing for 3 lots; 3/4 of the rest drained.
  sums.process += 0.9 * lot.pickup * M + 0.9 * 20 + 60 / 3;
  sums.drained += 0.75 * 0.9 * 20 + 60 / 3;
  sums.cod += 0.75 * 20 * codOfPad;
  sums.electricity += 5 * (0.1 + lot.length / (30 * 60));

  // Stenter, gas: from X₁ and 15 °C to 0.05 and 90 °C, exhaust 120 °C and 0.06, a fifth of its heat won back.
  sums.gas += stenter(
    { m, mc, D, X1: (R * m + 0.9 * lot.pickup * M) / m, t1: SUPPLY, length: lot.length },
    0.045,
    0.99,
  );
  sums.electricity += stenterPower(lot.length);

  // Printer: 200 m²/h at 9 + 26 kW, 1/4 h at 2 kW; belt 120 L/h and 5 L a lot; 3/4 of 0.2 L purged to the drain.
  sums.electricity += (35 * area) / 200 + 2 * 0.25;
  sums.process += (120 * area) / 200 + 5;
  sums.drained += (120 * area) / 200 + 5;
  sums.drained += 0.75 * 0.2 * (codOfInk === PIGMENT_INK ? 0.65 : 0.7);
  sums.cod += 0.75 * 0.2 * codOfInk;
}

// g COD per kg of pad liquor and per L of ink.
const PIGMENT_PAD = 8 * 1.3 + 10 * 1.7;
const PIGMENT_INK = 40 * 1.8 + 80 * 2.1 + 250 * 1.45 + 15 * 1.7;
const REACTIVE_PAD = 100 * 0 + 12 * 0.8 + 30 * 0;
const REACTIVE_INK = 100 * 0.9 + 200 * 1.45 + 5 * 1.7;

interface Drying {
  readonly m: number;
  readonly mc: number;
  readonly D: (X: number) => number;
  readonly X1: number;
  readonly t1: number;
  readonly length: number;
}

/** Drying on a stenter, v kg vapour per MJ of burner heat. [MJ drawn] */
function stenter(d: Drying, v: number, efficiency: number): number {
  const hot = 1.1 * (0.05 + d.length / (25 * 60));
  const w = d.m * (d.X1 - 0.05);
  const perAir = (1.006 + 1.86 * W1) * (120 - HALL) * (1 - 0.2);
  // 1000 Q = (w + v Q)/(W₂ − W₁) × perAir + v Q × 1.86 (t_e − t_h) + rest, solved for Q.
  const rest =
    w * (2501 + 1.86 * 120 - CW * d.t1) +
    (d.mc + d.m * CW * 0.05) * (90 - d.t1) +
    d.m * (d.D(0.05) - d.D(d.X1)) +
    30 * hot * 3600;
  const Q =
    ((w * perAir) / (0.06 - W1) + rest) /
    (1000 - (v * perAir) / (0.06 - W1) - v * 1.86 * (120 - HALL));
  return Q / efficiency;
}

/** 40 kW running, half of it for a tenth of the hours waiting. */
function stenterPower(length: number): number {
  return 40 * (0.05 + length / (25 * 60)) * (1 + 0.1 * 0.5);
}

/** Pigment arm fixed on the calender. */
export function byCalender(lot: HandLot): Sums {
  const sums = none();
  prepared(lot, PIGMENT_PAD, PIGMENT_INK, sums);
  const { m, mc, R, D } = clothOf(lot);
  // 30 s on 2.5 m, from the regain to 0.01 at 165 °C; 15 kW to the hall and 4 kW drives while hot.
  const hot = 1.1 * (0.1 + (lot.length * 30) / (3600 * 2.5));
  const Q =
    (m * (R - 0.01) * (2501 + 1.86 * 165 - CW * HALL) +
      (mc + m * CW * 0.01) * (165 - HALL) +
      m * (D(0.01) - D(R))) /
      1000 +
    15 * hot * 3.6;
  // Oil: η 0.88, a loop that loses 0.08, pumps 0.005 kWh/MJ.
  sums.gas += Q / (0.88 * 0.92);
  sums.electricity += 0.005 * Q + 4 * hot;
  return sums;
}

/** Pigment arm fixed on the stenter at a cloth temperature [°C] for some time [s]; 160 °C during set-up. */
export function byStenter(lot: HandLot, fix: number, dwell: number): Sums {
  const sums = none();
  prepared(lot, PIGMENT_PAD, PIGMENT_INK, sums);
  const { m, mc, R, D } = clothOf(lot);
  const run = (lot.length * dwell) / (3600 * 24);
  const hours = 0.05 + run;
  // 3000 kg/h of dry air, 10 °C hotter than the cloth; a tenth of its heat won back.
  const air = 3000 * (1.006 + 1.86 * W1) * 0.9 * (0.05 * (170 - HALL) + run * (fix + 10 - HALL));
  const heat =
    air +
    m * (R - 0.005) * (2501 + 1.86 * (fix + 10) - CW * HALL) +
    (mc + m * CW * 0.005) * (fix - HALL) +
    m * (D(0.005) - D(R)) +
    30 * 1.1 * hours * 3600;
  // The burner's own vapour, heated to the exhaust at the temperature set.
  sums.gas += heat / (1000 - 0.045 * 1.86 * (170 - HALL)) / 0.99;
  sums.electricity += 40 * hours * (1 + 0.1 * 0.5);
  return sums;
}

/** Dye arm: steamed, washed, squeezed, dried. */
export function byDye(lot: HandLot): Sums {
  const sums = none();
  prepared(lot, REACTIVE_PAD, REACTIVE_INK, sums);
  const { M, m, mc, R, D } = clothOf(lot);

  // Steamer: what condenses where water boils, 0.8 kg/kg flushing, 50 kg/h for a tenth of the hours; the rest to
  // 102 °C by electricity.
  const steaming = 0.1 + (lot.length * 600) / (3600 * 60);
  const condensed = ((mc + CW * R * m) * (BOILING - HALL)) / (HG - CW * BOILING);
  const steam = condensed + 0.8 * M + 50 * 0.1 * steaming;
  sums.steam += steam;
  sums.electricity += ((mc + steam * 2.0) * (102 - BOILING)) / 3600 + 6 * steaming;

  // Wash, boxes at 15, 60, 95, 95, 60, 15 °C, each fed with a sixth, won-back heat brings the feeds of the
  // warm ones to 15 + 0.3 × 45 and of the hot ones to 15 + 0.3 × 80 °C. The first box and the last would
  // have to be cooled.
  const warmFeed = 28.5;
  const hotFeed = 39;
  const F = (25 / 6) * M * CW;
  const k = mc + CW * 1.1 * M;
  const washing = 0.2 + lot.length / (25 * 60);
  const blownIn =
    (F * (60 - warmFeed) + k * (60 - 15)) / (HG - CW * warmFeed) +
    (F * (95 - hotFeed) + k * (95 - 60)) / (HG - CW * hotFeed) +
    (F * (95 - hotFeed) + k * 0) / (HG - CW * hotFeed) +
    (F * (60 - warmFeed) + k * (60 - 95)) / (HG - CW * warmFeed) +
    // Half a filling of 500 L, its sixths at the six temperatures.
    (250 * CW * (45 + 80 + 80 + 45)) / 6 / (HG - CW * SUPPLY) +
    // 10 kW from the surfaces.
    (10 * washing * 3600) / (HG - CW * hotFeed);
  sums.steam += blownIn;
  sums.process += 25 * M + 250 - blownIn;
  sums.drained += 25 * M + 250 + R * m + condensed - 1.1 * M;
  sums.electricity += 12 * washing;

  // What is not fixed and not evaporated, and 5 g/kg detergent.
  sums.cod +=
    lot.pickup * M * 12 * 0.8 +
    lot.ink * (100 * 0.3 * 0.9 + 200 * 0.95 * 1.45 + 5 * 1.7) +
    5 * M * 2.2;

  // Nip: from 1.1 kg/kg conditioned to 0.75 kg/kg bone dry.
  sums.drained += 1.1 * M - 0.75 * m;
  sums.electricity += (2 * lot.length) / (25 * 60);

  // Stenter behind a coil.
  sums.coil += stenter({ m, mc, D, X1: 0.75, t1: SUPPLY, length: lot.length }, 0, 1);
  sums.electricity += stenterPower(lot.length);
  return sums;
}

function none(): Sums {
  return { electricity: 0, gas: 0, coil: 0, steam: 0, process: 0, drained: 0, cod: 0 };
}

/** From the machines to the fence: users → boiler → water works → effluent plant. */
export function atFence(sums: Sums): Figures {
  const G = 1 / 0.95;
  const feed = 1 / 0.95;
  const blown = 0.05 / 0.95;
  const coilSteam = (sums.coil * 1000) / (HG - HF);
  // 0.8 of the coil's steam comes back, 0.76 of what was raised for it.
  const back = 0.8 * 0.95;
  const boiler =
    (sums.steam * G * (HG + blown * HF - feed * H15) +
      coilSteam * G * (HG + blown * HF - back * H90 - (feed - back) * H15)) /
    (0.85 * 1000);
  const process = sums.process + G * (sums.steam * feed + coilSteam * (feed - back));
  const water = process / 0.95;
  const drained = sums.drained + G * blown * (sums.steam + coilSteam) + coilSteam * (1 - G * back);
  const electricity =
    sums.electricity +
    0.002 * G * (sums.steam + coilSteam) +
    0.0005 * water +
    0.0008 * (drained + (water - process));
  const heat = (sums.gas + boiler) / 3.6;
  return { water, electricity, heat, energy: electricity + heat, cod: sums.cod };
}

/** The hand's figures added up. */
export function added(all: readonly Figures[]): Figures {
  const sum = (pick: (figures: Figures) => number): number =>
    all.reduce((total, figures) => total + pick(figures), 0);
  return {
    water: sum((f) => f.water),
    electricity: sum((f) => f.electricity),
    heat: sum((f) => f.heat),
    energy: sum((f) => f.energy),
    cod: sum((f) => f.cod),
  };
}
