/**
 * Money of an option, line by line and year by year, in one world: what would be paid, as amounts above 0, and what
 * comes in, below 0.
 */

import { type Arithmetic, sumOf } from "./arithmetic.js";
import { effluentOf } from "./effluent.js";
import { type Book, bookOf } from "./moved.js";
import { pricePath } from "./price-path.js";
import { yearQuantities, type YearQuantities } from "./quantities.js";
import type { CapitalLine, Study, StudyOption, YearlyLine } from "./study.js";
import type { World } from "./world.js";

/** Headings under which money is shown, in the order of print. */
export const HEADINGS = [
  "ink",
  "pre-treatment",
  "water",
  "effluent",
  "heat",
  "electricity",
  "labour",
  "maintenance",
  "rejects",
  "space",
  "carbon",
  "other",
  "capital",
] as const;

/** A heading. */
export type Heading = (typeof HEADINGS)[number];

/** Money of one line. */
export interface LineMoney<T> {
  /** Heading it stands under. */
  readonly heading: Heading;
  /** What it is: a flow, or the words of a line. */
  readonly what: string;
  /** Input its price is, by id. */
  readonly input: string;
  /** Money by year, from year 0 on. */
  readonly money: readonly T[];
}

/** Cost of an option. */
export interface Cost<T> {
  /** Lines. */
  readonly lines: readonly LineMoney<T>[];
  /** What is printed, and share of the lots that may move which has moved, by year. */
  readonly book: Book<T>;
  /** Tonnes of CO2e by year: scopes 1 and 2 by location, and what a partner house causes. */
  readonly tonnes: readonly T[];
  /** Quantities behind it. */
  readonly quantities: YearQuantities<T>;
}

const FLOW_HEADING = (flow: string): Heading => {
  if (flow.startsWith("ink.")) return "ink";
  if (flow.startsWith("fuel.") || flow === "steam.bought") return "heat";
  if (flow === "water.withdrawn") return "water";
  if (flow === "machine.hours") return "labour";
  if (flow === "electricity") return "electricity";
  return "other";
};

const YEARLY_HEADING: Readonly<Record<string, Heading>> = {
  "pre-treatment": "pre-treatment",
  labour: "labour",
  maintenance: "maintenance",
  space: "space",
};

/** Flows of CO2e. [kg] */
const CARBON_FLOWS = ["scope-1", "scope-2-location", "partner-co2"] as const;

// What a flow is multiplied by to be priced: MJ of fuel and steam in kWh, L of water in m³.
const PER_PRICE = (flow: string): number =>
  flow.startsWith("fuel.") || flow === "steam.bought"
    ? 1 / 3.6
    : flow === "water.withdrawn"
      ? 1e-3
      : 1;

/**
 * Works the cost of an option out.
 *
 * @param study - the study
 * @param option - the option
 * @param life - years looked at
 * @param world - values
 * @returns its lines
 */
export function costOf<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
): Cost<T> {
  const { math } = world;
  const book = bookOf(study, option, life, world);
  const years = yearQuantities(study, option, life, world, book);
  const lines: LineMoney<T>[] = [];
  const add = (heading: Heading, what: string, input: string, money: readonly T[]): void => {
    if (money.some((each) => math.number(each) !== 0)) lines.push({ heading, what, input, money });
  };
  const priced = (quantities: readonly T[], path: readonly T[], per = 1): readonly T[] =>
    quantities.map((quantity, year) =>
      math.times(math.times(quantity, math.of(per)), path[year] ?? math.of(0)),
    );
  for (const [flow, price] of study.prices) {
    const path = pricePath(study, world, price, life);
    const quantities = years.get(flow);
    if (quantities !== undefined)
      add(FLOW_HEADING(flow), flow, price.price.id, priced(quantities, path, PER_PRICE(flow)));
  }
  const extra = (name: string, quantities: readonly T[], heading: Heading, per = 1): void => {
    const price = study.prices.get(name);
    if (price === undefined) return;
    add(
      heading,
      name,
      price.price.id,
      priced(quantities, pricePath(study, world, price, life), per),
    );
  };
  extra("cloth", years.get("rejected") ?? [], "rejects");
  extra("carbon", years.get("scope-1") ?? [], "carbon", 1e-3);
  for (const [machine, { standby }] of option.adds) {
    const price = standby === undefined ? undefined : study.prices.get(standby.flow);
    if (standby === undefined || price === undefined) continue;
    const path = pricePath(study, world, price, life);
    const heading = standby.flow === "electricity" ? "electricity" : "heat";
    const name = `standby.${machine}`;
    add(heading, name, standby.power.id, priced(years.get(name) ?? [], path));
  }
  if (study.beyond !== undefined) {
    const { price } = study.beyond;
    const path = pricePath(study, world, price, life);
    add("other", "undone-m2", price.price.id, priced(years.get("undone-m2") ?? [], path));
  }
  if (option.demand !== undefined) {
    const kilowatts = world.of(option.demand);
    extra(
      "demand",
      Array.from({ length: life + 1 }, (_, t) => (t === 0 ? math.of(0) : kilowatts)),
      "electricity",
    );
  }
  add("effluent", "effluent", "effluent.level", effluentOf(study, life, world, years));
  const factors = {
    year: Array.from({ length: life + 1 }, (_, t) => math.of(t === 0 ? 0 : 1)),
    "moved-m2": years.get("moved-m2") ?? [],
    "moved-kg": years.get("moved-kg") ?? [],
    "all-m2": years.get("all-m2") ?? [],
  };
  for (const line of option.yearly) {
    const own = priced(factors[line.per], pricePath(study, world, line, life));
    const before = sameLine(study, option, line);
    // What is paid less than by carrying on falls as lots move, not on the first day.
    const money =
      before === undefined
        ? own
        : priced(factors.year, pricePath(study, world, before, life)).map((paid, year) =>
            math.plus(
              paid,
              math.times(math.minus(own[year] ?? math.of(0), paid), book.moved[year] ?? math.of(0)),
            ),
          );
    add(YEARLY_HEADING[line.kind] ?? "other", line.what, line.price.id, money);
  }
  for (const line of option.capital) {
    if (line.year > life) continue;
    const path = pricePath(study, world, line, life);
    const due = paidIn(line, life);
    const times = (year: number): T => math.times(path[year] ?? math.of(0), world.of(study.outlay));
    const back = math.times(times(life), math.of(leftOf(line, life, due.at(-1) ?? line.year)));
    add(
      "capital",
      line.what,
      line.price.id,
      path.map((_, year) => {
        const paid = due.includes(year) ? times(year) : math.of(0);
        return year === life ? math.minus(paid, back) : paid;
      }),
    );
  }
  if (option.residual !== undefined && life === option.text.life) {
    const path = pricePath(study, world, option.residual, life);
    add(
      "capital",
      "worth at the end",
      option.residual.price.id,
      path.map((worth, year) => (year === life ? math.minus(math.of(0), worth) : math.of(0))),
    );
  }
  const tonnes = Array.from({ length: life + 1 }, (_, year) =>
    math.times(
      math.of(1e-3),
      sumOf(
        math,
        CARBON_FLOWS.map((flow) => years.get(flow)?.[year] ?? math.of(0)),
      ),
    ),
  );
  return { lines, book, tonnes, quantities: years };
}

// The line of carrying on that one of an option which moves lots is the same as, word for word.
function sameLine(
  { carryOn }: Study,
  { moving }: StudyOption,
  { what, kind, per }: YearlyLine,
): YearlyLine | undefined {
  if (moving.length === 0 || per !== "year") return undefined;
  return carryOn.yearly.find(
    (line) => line.what === what && line.kind === kind && line.per === per,
  );
}

/**
 * Years in which a line of capital is paid: what lasts shorter than the years looked at is bought again.
 *
 * @param line - the line
 * @param life - years looked at
 * @returns years, the first included
 */
export function paidIn(line: Pick<CapitalLine, "year" | "lasts">, life: number): readonly number[] {
  const { year, lasts } = line;
  if (lasts === undefined) return [year];
  const times = Math.max(1, Math.ceil((life - year) / lasts));
  return Array.from({ length: times }, (_, i) => year + i * lasts);
}

// Share of a line that is left at the end: all of working capital, and of what serves longer than the years looked
// at the part not yet used up, so that a short study gets no more credit for sparing it than it spares.
function leftOf({ kind, lasts }: CapitalLine, life: number, year: number): number {
  if (kind === "working-capital") return 1;
  return lasts === undefined ? 0 : Math.max(0, (year + lasts - life) / lasts);
}

/**
 * Money of a cost by heading and year.
 *
 * @param math - arithmetic
 * @param cost - the cost
 * @param life - last year
 * @returns sums of its lines; headings without lines are left out
 */
export function byHeadingOf<T>(
  math: Arithmetic<T>,
  cost: Cost<T>,
  life: number,
): ReadonlyMap<Heading, readonly T[]> {
  const sums = new Map<Heading, T[]>();
  for (const { heading, money } of cost.lines) {
    let sum = sums.get(heading);
    if (sum === undefined) {
      sum = Array.from({ length: life + 1 }, () => math.of(0));
      sums.set(heading, sum);
    }
    for (let year = 0; year <= life; year++)
      sum[year] = math.plus(sum[year] ?? math.of(0), money[year] ?? math.of(0));
  }
  return sums;
}
