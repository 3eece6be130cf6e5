import { beforeAll, describe, expect, it, vi } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { writeProgram } from "../../src/account/program.js";
import { DECIMALS } from "../../src/invest/arithmetic.js";
import { avoidedBy } from "../../src/invest/avoidable.js";
import { drawnOptions, orderOf } from "../../src/invest/doubt.js";
import { breakEvensOf, isoWorth, worthSwings } from "../../src/invest/drivers.js";
import { findingsOf } from "../../src/invest/findings.js";
import { leaseOf, loanOf } from "../../src/invest/finance.js";
import { gainOf } from "../../src/invest/gain.js";
import { judgeStudy } from "../../src/invest/judge-study.js";
import { lotFlows } from "../../src/invest/lot-flows.js";
import { leadTimes } from "../../src/invest/lead-time.js";
import { machineUses } from "../../src/invest/machine-use.js";
import { measuresOf, scheduleOf } from "../../src/invest/measures.js";
import { presentValue } from "../../src/invest/present-value.js";
import { readInvest } from "../../src/invest/read-invest.js";
import type { Study } from "../../src/invest/study.js";
import { whatIfsOf } from "../../src/invest/what-ifs.js";
import { centralWorld, drawnWorld, exactWorld } from "../../src/invest/world.js";
import { mean } from "../../src/numbers/quantiles.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { DAY, DEMO_TEXT, type DemoMill, demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let mill: DemoMill;
let study: Study;

beforeAll(async () => {
  mill = await demoMill();
  study = demoStudy(mill);
});

const worthOf = (one: Study, held: readonly (readonly [string, number])[] = []): number =>
  gainOf(one, one.project, centralWorld(new Map(held))).worth;

describe("flows of lots", () => {
  it("are those of the account, which adds them up another way", () => {
    const program = writeProgram(mill.plant, SHIPPED, mill.groups, DAY);
    const account = accountOf(program, 60, 1);
    const flows = lotFlows({
      program,
      plant: mill.plant,
      groups: mill.groups,
      ruleOf: () => 0,
      rules: 1,
      yearly: 1,
      draws: 60,
      seed: 1,
    });
    const total = (table: typeof flows.all, flow: string): number =>
      [...(table.get(flow) ?? [])].reduce(
        (sum, [, { running, waiting }]) => sum + mean(running) + mean(waiting),
        0,
      );
    for (const flow of [
      "electricity",
      "fuel.natural-gas",
      "water.withdrawn",
      "cod",
      "machine.hours",
    ]) {
      const known = mean(account.fence.actual.get(flow) ?? new Float64Array([NaN]));
      expect(total(flows.all, flow) / known).toBeCloseTo(1, 9);
    }
    const carbon = total(flows.all, "scope-1") + total(flows.all, "scope-2-location");
    const known = mean(account.indicators.actual.get("co2-location") ?? new Float64Array([NaN]));
    expect(carbon / known).toBeCloseTo(1, 9);
  });

  it("leave standby behind unless the machine is taken out", () => {
    const charged = { running: Float64Array.of(5, 6), waiting: Float64Array.of(1, 2) };
    expect([...avoidedBy(charged, false)]).toEqual([5, 6]);
    expect([...avoidedBy(charged, true)]).toEqual([6, 8]);
  });
});

describe("what an option brings", () => {
  it("agrees in decimals and in doubles to half a cent", () => {
    for (const option of study.options) {
      const drawn = gainOf(study, option, centralWorld()).worth;
      const exact = gainOf(study, option, exactWorld()).worth;
      expect(Math.abs(DECIMALS.number(exact) - drawn)).toBeLessThan(0.005);
    }
  });

  it("is what carrying on costs less what the option costs, in every year and draw", () => {
    for (const at of [0, 17, 59]) {
      const { flows, carryOn, option } = gainOf(study, study.project, drawnWorld(at));
      flows.forEach((flow, year) => {
        const cost = ({ lines }: typeof option): number =>
          lines.reduce((sum, { money }) => sum + (money[year] ?? 0), 0);
        expect(flow).toBeCloseTo(cost(carryOn) - cost(option), 6);
      });
    }
  });

  it("is nothing for an option that is the same as carrying on", () => {
    const same = { ...study.carryOn, text: { ...study.carryOn.text, life: 9 } };
    expect(gainOf(study, same, drawnWorld(3)).worth).toBe(0);
  });

  it("scales with the currency", () => {
    const inDollars = demoStudy(mill, (text) =>
      text
        .replaceAll("currency: EUR", "currency: USD")
        .replace(
          "currency: USD",
          "currency: EUR\nrates: { USD: { value: 2, exact: true, date: 2026-10-01, tag: invoice } }",
        ),
    );
    expect(worthOf(inDollars) / worthOf(study)).toBeCloseTo(2, 9);
  });

  it("is the same by the real and by the nominal route", () => {
    // (1 + nominal) = (1 + 0.07)(1 + 0.02); growth of prices likewise.
    const nominal = demoStudy(mill, (text) =>
      text
        .replace(/money: real.*/, "money: nominal")
        .replace("basis: real", "basis: nominal")
        .replace(
          /value: 0\.07,(\s*)low: 0\.05,(\s*)high: 0\.1,/,
          "value: 0.0914,$1low: 0.05,$2high: 0.1,",
        ),
    );
    const flat = (one: Study): readonly (readonly [string, number])[] =>
      [...one.inputs.keys()]
        .filter((id) => id.endsWith(".growth") && id !== "orders.growth")
        .map((id) => [id, one.money === "real" ? 0 : 0.02]);
    expect(worthOf(nominal, flat(nominal)) / worthOf(study, flat(study))).toBeCloseTo(1, 9);
  });

  it("falls when capital, ink or rejects rise, and with the discount rate where money comes later", () => {
    const base = worthOf(study);
    expect(worthOf(study, [["outlay", 1.1]])).toBeLessThan(base);
    expect(worthOf(study, [["prices.ink.pigment", 14]])).toBeLessThan(base);
    expect(worthOf(study, [["options.second calender.rejects", 0.03]])).toBeLessThan(base);
    expect(worthOf(study, [["discount", 0.12]])).toBeLessThan(base);
  });

  it("does not count hours that are paid for all the same", () => {
    const { byHeading } = gainOf(
      study,
      study.project,
      centralWorld(new Map([["stays.labour", 1]])),
    );
    // Nothing is saved, and the hours that fixing asks for come on top.
    const labour = byHeading.get("labour") ?? [];
    expect(labour[0]).toBe(0);
    for (const money of labour.slice(1)) expect(money).toBeLessThan(0);
  });

  it("moves no more lots than machines have hours for", () => {
    const held = new Map([["capacity.printer-1.hours", 3500]]);
    const world = centralWorld(held);
    const { option } = gainOf(study, study.project, world);
    const at = option.book.moved[5] ?? 0;
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThan(1);
    const [first] = machineUses({ ...study, inputs: study.inputs }, study.project, 5, 10);
    expect(first?.machine).toBe("printer-1");
  });

  it("counts back what serves longer than a short study", () => {
    const { lines } = gainOf(study, study.options.at(-1)!, centralWorld()).carryOn;
    const basin = lines.find(({ what }) => what.startsWith("balancing basin"));
    // 64,000 in year 2 for 20 years: 17 of 20 are left after 5.
    expect(basin?.money[2]).toBeCloseTo(64000, 6);
    expect(basin?.money[5]).toBeCloseTo((-64000 * 17) / 20, 6);
  });
});

describe("measures", () => {
  it("have a rate of return at which the worth is nothing", () => {
    for (const option of study.options) {
      const { rates, gain } = measuresOf(study, option);
      const { mainRate = NaN } = measuresOf(study, option);
      expect(rates).toContain(mainRate);
      const beside = (by: number): number =>
        presentValue(centralWorld().math, mainRate + by, gain.flows);
      expect(beside(-1e-3)).toBeGreaterThan(beside(1e-3));
      for (const rate of rates) {
        const size = gain.flows.reduce((sum, flow, t) => sum + Math.abs(flow) / (1 + rate) ** t, 0);
        expect(Math.abs(presentValue(centralWorld().math, rate, gain.flows)) / size).toBeLessThan(
          1e-9,
        );
      }
    }
  });

  it("have a schedule whose discounted column adds up to the worth within its roundings", () => {
    const years = scheduleOf(study, study.project);
    const sum = years.reduce((total, { present }) => total + Number(present), 0);
    expect(Math.abs(sum - worthOf(study))).toBeLessThan(0.005 * years.length + 0.005);
    for (const { byHeading, flow, tax } of years) {
      const parts = [...byHeading.values()].reduce((total, money) => total + Number(money), 0);
      expect(Math.abs(parts - Number(tax) - Number(flow))).toBeLessThan(
        0.005 * byHeading.size + 0.006,
      );
    }
  });
});

describe("doubt", () => {
  it("is the same for the same seed, and puts every option at one place in every draw", () => {
    const [one, two] = [
      drawnOptions(study, study.options, 40),
      drawnOptions(study, study.options, 40),
    ];
    expect(one.map(({ worth }) => [...worth])).toEqual(two.map(({ worth }) => [...worth]));
    const order = orderOf("carry on", one);
    for (const { places } of order) expect(places.reduce((sum, n) => sum + n, 0)).toBe(40);
    for (let place = 0; place < order.length; place++)
      expect(order.reduce((sum, { places }) => sum + (places[place] ?? 0), 0)).toBe(40);
  });

  it("takes a line that stands in two options once", () => {
    const shared = [...study.inputs.keys()].filter((id) => id.includes("better wash.capex"));
    // Basin and drum are word for word those of carrying on; piping, fitting and overhaul are not.
    expect(shared).toHaveLength(3);
  });
});

describe("break-evens", () => {
  it("are where the worth is nothing", () => {
    const turns = breakEvensOf(study, study.project).filter(({ at }) => at !== undefined);
    expect(turns.length).toBeGreaterThan(5);
    for (const { input, at = NaN } of turns)
      expect(Math.abs(worthOf(study, [[input.id, at]]))).toBeLessThan(1);
  });

  it("of ink and volume lie on the line of equal worth", () => {
    const ink = "prices.ink.pigment";
    const [alone] = isoWorth(study, study.project, ink, [1]);
    const turn = breakEvensOf(study, study.project).find(({ input }) => input.id === ink);
    expect(alone?.price).toBeCloseTo(turn?.at ?? NaN, 6);
    const [half] = isoWorth(study, study.project, ink, [0.5], 10000);
    expect(
      worthOf(study, [
        ["orders.level", 0.5],
        [ink, half?.price ?? NaN],
      ]),
    ).toBeCloseTo(10000, 3);
  });

  it("and swings begin with the widest", () => {
    const swings = worthSwings(study, study.project, 40);
    const widths = swings.map(({ low, high }) => Math.abs(high - low));
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    const ink = swings.find(({ input }) => input?.id === "prices.ink.pigment");
    // Its high end is farther from the value than its low end, so its median is dearer.
    expect(ink?.middle).toBeLessThan(worthOf(study));
    expect(ink?.middle).toBeGreaterThan(ink?.high ?? NaN);
  });
});

describe("what-ifs", () => {
  it("answer with a number and draws", () => {
    const answers = whatIfsOf(study, study.project, 30);
    const of = (code: string): number => answers.find((one) => one.code === code)?.central ?? NaN;
    expect(of("fewer-orders")).toBeCloseTo(worthOf(study, [["orders.level", 0.7]]), 6);
    expect(of("gas-doubles")).toBeGreaterThan(of("gas-halves"));
    expect(of("carry-on-pays-nothing")).toBeLessThan(worthOf(study));
    expect(of("neither-pays")).toBeGreaterThan(of("carry-on-pays-nothing"));
    expect(of("nothing-leaves")).toBeCloseTo(
      worthOf(study, [
        ["stays.labour", 1],
        ["stays.heat", 1],
      ]),
      6,
    );
    for (const { drawn } of answers) expect(drawn.worth).toHaveLength(30);
    // Strength costs more than volume here, and what is charged more is saved more.
    expect(of("tariff-by-strength")).toBeGreaterThan(worthOf(study));
    expect(of("tariff-by-volume")).toBeLessThan(worthOf(study));
    expect(of("exhaust-due-anyway")).toBeCloseTo(worthOf(study) + 14000, 6);
    const litres = (code: string): number =>
      answers.find((one) => one.code === code)?.litres ?? NaN;
    expect(litres("fewer-orders") / litres("gas-halves")).toBeCloseTo(0.7, 9);
  });
});

describe("paying", () => {
  it("covers instalments in money of their year, and sets a lease beside buying", () => {
    const loan = loanOf(study, study.project, 60);
    const flows = gainOf(study, study.project, centralWorld()).flows;
    const year = loan?.years[3];
    const paid = year!.interest.plus(year!.repaid).toNumber();
    // Money of the start grows by 2 % a year.
    expect(year!.coverSpared * paid).toBeCloseTo((flows[4] ?? NaN) * 1.02 ** 4, 6);
    // In year 3 carrying on would have overhauled the range; the project lays out nothing.
    const third = loan!.years[2]!;
    const spared = (third.coverSpared - third.cover) * third.interest.plus(third.repaid).toNumber();
    expect(spared).toBeCloseTo(38000 * 1.02 ** 3, 6);
    expect(third.cover * third.interest.plus(third.repaid).toNumber()).toBeCloseTo(third.own, 6);
    for (const { paid: due, adds, cover, coverDrawn } of loan!.years) {
      expect(adds).toBeCloseTo(Math.max(0, due * (1 - cover)), 6);
      expect(coverDrawn.low).toBeLessThan(coverDrawn.high);
    }
    const lease = leaseOf(study, study.project);
    // At the loan's 5.5 %, nominal as the payments are.
    let leased = 4000 / 1.055 ** 7;
    for (let t = 1; t <= 7; t++) leased += 15400 / 1.055 ** t;
    expect(lease?.bought).toBe(84000);
    expect(lease?.leased).toBeCloseTo(leased, 6);
    expect(lease?.worth).toBeCloseTo(worthOf(study) + 84000 - leased, 6);
    expect(lease).toMatchObject({ rate: 0.055, ofLoan: true });
    // At the house's own rate, 7 % in money of the start and 2 % of inflation.
    const house = 1.07 * 1.02;
    let dear = 4000 / house ** 7;
    for (let t = 1; t <= 7; t++) dear += 15400 / house ** t;
    expect(lease?.own.leased).toBeCloseTo(dear, 6);
    expect(lease?.own.leased).toBeLessThan(lease?.own.bought ?? NaN);
    expect(1 + (lease?.impliedReal ?? NaN)).toBeCloseTo((1 + (lease?.implied ?? NaN)) / 1.02, 12);
    // At its own rate the payments are worth what the machine costs.
    const own = lease?.implied ?? NaN;
    let price = 4000 / (1 + own) ** 7;
    for (let t = 1; t <= 7; t++) price += 15400 / (1 + own) ** t;
    expect(price).toBeCloseTo(84000, 4);
  });
});

describe("machines", () => {
  it("wait u/(1 − u) times as long as they are held", () => {
    const { dye, pigment } = leadTimes(study, study.project, 3, 40);
    for (const { process, queue, total } of [dye, pigment]) {
      expect(process.median).toBeGreaterThan(0);
      expect(total[2]).toBeGreaterThanOrEqual(Math.max(process.median, queue.median));
    }
  });

  it("may not be taken out while lots need them", () => {
    const text = DEMO_TEXT.replace(
      "    to: pigment-calender\n",
      "    to: pigment-calender\n    removes: [steamer]\n",
    );
    const read = readInvest({ name: "invest.yaml", text }).value;
    const problems = judgeStudy(
      read!,
      demoStudy(mill, () => text),
    );
    expect(problems.filter(({ severity }) => severity === "refused")).toMatchObject([
      { code: "machine-still-needed", value: "steamer", key: "options.second calender.removes[0]" },
    ]);
    expect(problems[0]?.line).toBe(text.split("\n").indexOf("    removes: [steamer]") + 1);
  });
});

describe("findings", () => {
  it("hold all of it, and rest on tags that add up", () => {
    const found = findingsOf(study);
    expect(found.options.map(({ option }) => option.text.kind)).toEqual([
      "improve-wash",
      "pigment-calender",
      "pigment-calender",
      "pigment-stenter",
      "outsource",
    ]);
    for (const { tags } of found.options)
      expect([...tags.values()].reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(found.lines[0]?.worth).toBe(0);
    expect(found.modelParts[0]?.heading).toBe("ink");
  });
});
