/**
 * Money of the investment file as inputs: prices, lines, rates, shares, each drawn once and known by its id.
 */

import { addedMachines, capacities, type Making, waitsOf } from "./machine-inputs.js";
import { effluentInputs } from "./effluent-inputs.js";
import type { EffluentTariff } from "./effluent-tariff.js";
import { type Drawing, heldInput, type Input, inputOf, type Named } from "./inputs.js";
import type { GivenText, InvestText, OptionText, PriceText, TariffText } from "./schema.js";
import type { DatedTariff, MoneyLine, Price, Study, StudyOption } from "./study.js";
import { PER, PRICED } from "./price-names.js";
import { tariffFrom } from "./tariff-text.js";

const MS_PER_YEAR = 365.25 * 86_400_000;

/** What a study says of money, apart from its lots and options. */
type Terms = Omit<
  Study,
  | "months"
  | "accepted"
  | "rejected"
  | "carryOn"
  | "options"
  | "inputs"
  | "draws"
  | "project"
  | "otherTariff"
  | "afterWash"
>;

/** Turns the file's numbers into inputs. */
export class Cashier {
  /** Inputs so far. */
  readonly inputs = new Map<string, Input>();
  readonly #lines = new Map<string, string>();
  readonly #text: InvestText;
  readonly #drawing: Drawing;
  readonly #making: Making = {
    input: (named, given) => this.#input(named, given),
    held: (id, words, value) => this.#held(id, words, value),
  };

  /**
   * @param text - the file
   * @param drawing - number of draws and seed
   */
  constructor(text: InvestText, drawing: Drawing) {
    this.#text = text;
    this.#drawing = drawing;
  }

  /**
   * What the study says of money.
   *
   * @returns rates, prices and tariffs
   */
  terms(): Terms {
    const text = this.#text;
    const rate = (id: string, words: string, given: GivenText): Input =>
      this.#input({ id, words, unit: "a year", limits: [-0.9, 10] }, given);
    const { effluent, orders } = text;
    const part = (id: string, words: string, given: GivenText): Input =>
      this.#input({ id, words, unit: "1", limits: [0, 1] }, given);
    return {
      title: text.study,
      currency: text.currency,
      money: text.money,
      timing: text.timing,
      start: text.start,
      discount: this.#undrawn(rate("discount", "discount rate", text.discount)),
      inflation:
        text.inflation === undefined ? undefined : rate("inflation", "inflation", text.inflation),
      reinvest: (text.reinvest ?? text.discount).value,
      tax: text.tax === "none" ? undefined : text.tax,
      growth: rate("orders.growth", "growth of the order book", orders.growth),
      level: this.#input(
        { id: "orders.level", words: "order book against the logged year", unit: "1" },
        orders.level,
      ),
      eligible: this.#held("moves.all", "share of lots that may move, times that of the file", 1),
      outlay: this.#held("outlay", "capital, times that of the file", 1),
      prices: this.#prices(),
      stays: new Map(
        Object.entries(text.stays ?? {}).flatMap(
          ([name, given]: [string, GivenText | undefined]) =>
            given === undefined
              ? []
              : [[name, part(`stays.${name}`, `share of ${name} paid for all the same`, given)]],
        ),
      ),
      effluent: {
        tariffs: effluent.tariffs.map((tariff) => this.tariff(tariff)),
        ...effluentInputs(effluent, this.#making),
      },
      beyond:
        text.beyond === undefined
          ? undefined
          : {
              way: text.beyond.do,
              price: this.#price(
                "beyond.price",
                text.beyond.do === "cut"
                  ? "sales of orders that are lost"
                  : "printing bought outside",
                "m²",
                text.beyond.price,
              ),
            },
      capacity: capacities(text.capacity, this.#making),
      waits: waitsOf(text.waits, this.#making),
    };
  }

  /**
   * Share of the lots of a rule that may move.
   *
   * @param at - place of the rule
   * @returns the share
   */
  share(at: number): Input {
    const id = `moves[${at}].share`;
    const rule = this.#text.moves[at];
    if (rule === undefined) throw new Error(`There is no rule ${at}.`);
    const who = [rule.client, rule.fabric].filter((part) => part !== undefined).join(", ");
    const words = `share of ${who === "" ? "all other lots" : who} that may move`;
    return this.#input({ id, words, unit: "1", limits: [0, 1] }, rule.share);
  }

  /**
   * A tariff for effluent.
   *
   * @param text - as written
   * @returns the tariff by date
   */
  tariff(text: TariffText): DatedTariff {
    const judged = tariffFrom(text);
    if ("missing" in judged) throw new Error(`A tariff lacks ${judged.missing.join(", ")}.`);
    const tariff: EffluentTariff<number> = judged;
    const { from, tag, source = "" } = text;
    return { from, tariff, exchange: this.#exchange(text.currency), tag, source };
  }

  /**
   * Money of an option.
   *
   * @param name - its name
   * @param option - as written
   * @returns lines and what goes with them
   */
  option(
    name: string,
    option: OptionText,
  ): Pick<
    StudyOption,
    "adds" | "capital" | "yearly" | "residual" | "demand" | "rejects" | "rampup"
  > {
    const at = `options.${name}`;
    const line = (
      list: string,
      i: number,
      text: PriceText & { readonly what: string; readonly kind: string },
      per: string,
    ): MoneyLine => ({
      ...this.#price(this.#lineId(name, list, i, text), text.what, per, text, text.what),
      what: text.what,
      kind: text.kind,
    });
    return {
      adds: addedMachines(at, option, this.#making),
      capital: option.capex.map((text, i) => ({
        ...line("capex", i, text, ""),
        year: text.year,
        lasts: text.lasts,
        machine: text.machine ?? "",
        owner: text.owner ?? "",
        due: text.due ?? "",
      })),
      yearly: (option.yearly ?? []).map((text, i) => ({
        ...line("yearly", i, text, PER[text.per]),
        per: text.per,
      })),
      residual:
        option.residual === undefined
          ? undefined
          : this.#price(`${at}.residual`, `worth of ${name} at the end`, "", option.residual),
      demand:
        option.demand_kw === undefined
          ? undefined
          : this.#input(
              {
                id: `${at}.demand_kw`,
                words: `change of peak demand, ${name}`,
                unit: "kW",
                limits: [-1e6, 1e6],
              },
              option.demand_kw,
            ),
      rejects:
        option.rejects === undefined
          ? undefined
          : this.#input(
              {
                id: `${at}.rejects`,
                words: `rejects of pigment, ${name}`,
                unit: "1",
                limits: [0, 0.9],
              },
              option.rejects,
            ),
      rampup: option.rampup ?? this.#text.rampup,
    };
  }

  #prices(): Study["prices"] {
    const { prices } = this.#text;
    const list: (readonly [string, Price])[] = PRICED.flatMap(([key, flow, words, per]) => {
      const text = prices[key];
      return text === undefined ? [] : [[flow, this.#price(`prices.${key}`, words, per, text)]];
    });
    for (const [fuel, text] of Object.entries(prices.fuel ?? {}))
      list.push([`fuel.${fuel}`, this.#price(`prices.fuel.${fuel}`, fuel, "kWh net", text)]);
    for (const [ink, text] of Object.entries(prices.ink ?? {}))
      list.push([`ink.${ink}`, this.#price(`prices.ink.${ink}`, `${ink} ink`, "L", text)]);
    return new Map(list);
  }

  // A line that stands word for word in several options is one input; others of the same name rise and fall together.
  #lineId(
    option: string,
    list: string,
    i: number,
    text: PriceText & { readonly what: string },
  ): string {
    const own = JSON.stringify([
      text.what,
      text.value,
      text.low,
      text.high,
      text.currency,
      text.tag,
    ]);
    const known = this.#lines.get(own) ?? `options.${option}.${list}[${i}]`;
    this.#lines.set(own, known);
    return known;
  }

  #price(id: string, words: string, per: string, text: PriceText, stream = id): Price {
    const unit = per === "" ? text.currency : `${text.currency}/${per}`;
    const limits = text.value < 0 ? ([-1e12, 0] as const) : ([0, 1e12] as const);
    return {
      price: this.#input({ id, words, unit, limits, stream }, text),
      exchange: this.#exchange(text.currency),
      growth:
        text.growth === undefined
          ? undefined
          : this.#input(
              {
                id: `${id}.growth`,
                words: `growth of ${words}`,
                unit: "a year",
                limits: [-0.5, 0.5],
              },
              text.growth,
            ),
      age: Math.max(
        0,
        Math.floor((Date.parse(this.#text.start) - Date.parse(text.date)) / MS_PER_YEAR),
      ),
    };
  }

  #exchange(currency: string): Input {
    const rate = this.#text.rates?.[currency];
    if (currency === this.#text.currency || rate === undefined)
      return this.#held(`rates.${currency}`, currency, 1);
    const unit = `${this.#text.currency}/${currency}`;
    return this.#input({ id: `rates.${currency}`, words: `price of ${currency}`, unit }, rate);
  }

  // A rate is chosen, not met: it is held in draws, and its ends are shown as sensitivity.
  #undrawn(input: Input): Input {
    const held = { ...input, draws: undefined };
    this.inputs.set(held.id, held);
    return held;
  }

  #held(id: string, words: string, value: number): Input {
    const known = this.inputs.get(id) ?? heldInput(id, words, value);
    this.inputs.set(id, known);
    return known;
  }

  #input(named: Named, given: GivenText): Input {
    const known = this.inputs.get(named.id) ?? inputOf(named, given, this.#drawing);
    this.inputs.set(named.id, known);
    return known;
  }
}
