/**
 * Machines and lead time: who is busy, month by month, and how long lots take.
 */

import { BUSY } from "../../invest/machine-use.js";
import type { Block } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, inputValue, money, paragraph, right, span, table } from "./desk.js";

/**
 * The chapter.
 *
 * @param desk - the report
 * @returns figures with their tables
 */
export function hallBlocks(desk: InvestDesk): readonly Block[] {
  return [...useBlocks(desk), ...leadBlocks(desk)];
}

function useBlocks(desk: InvestDesk): readonly Block[] {
  const { uses, usesBefore, project, study } = desk.found;
  const { year } = project.measures.steady;
  const [most] = uses;
  if (most === undefined) return [paragraph(["No hours of machines are given under capacity."])];
  const moved = project.measures.gain.option.book.moved[year] ?? 0;
  const wanted = project.option.rampup[Math.min(year, project.option.rampup.length) - 1] ?? 0;
  const area = areaPerHour(desk, most.runs);
  return [
    paragraph([
      `In year ${year} the busiest machine of ${project.option.name} is ${most.machine}: `,
      desk.number("use", (100 * most.runs) / most.has, "%", 0).run,
      ` % of its hours (10 to 90 % of draws ${formatPercent(most.use.low)} to ${formatPercent(most.use.high)})${most.use.median > BUSY ? ". Above 85 % lots wait long" : ""}. ${moved < wanted ? `For want of hours only ${formatPercent(moved / wanted)} of the lots that may move can.` : "All lots that may move find room."}`,
    ]),
    loadFigure(desk, "capacity", area / 12, {
      times: 1,
      title: `Area through ${most.machine} with ${project.option.name}, as logged, beside what it can do, m² a month`,
    }),
    loadFigure(desk, "capacity-last", area / 12, {
      times: ordersIn(desk, project.option.text.life),
      title: `The same in year ${project.option.text.life}, as orders grow, m² a month`,
    }),
    table(
      "capacity-months",
      "Area printed by month as logged, m², and of the dye area what the rules let move.",
      ["Month", "Dye", "May move", "Pigment"],
      desk.input.months.map(({ month, dye, mayMove, pigment }) => [
        month,
        right(money(dye)),
        right(money(mayMove)),
        right(money(pigment)),
      ]),
      { behind: true },
    ),
    table(
      "machines",
      `Hours of machines in year ${year}: what they have (staffed hours × availability, those of machines bought with them), what they run in hours of the existing one, and use with 10 to 90 % of the draws. An hour of a faster machine counts in use as that many hours of the existing one. None runs longer than it has hours.`,
      [
        "Machine",
        "Staffed × availability, h",
        study.carryOn.name,
        project.option.name,
        "Use before",
        "Use after",
      ],
      uses.map(({ machine, has, runs, use }) => {
        const before = usesBefore.find((one) => one.machine === machine);
        return [
          machine,
          right(money(staffed(desk, machine))),
          right(money(before?.runs ?? NaN)),
          right(money(runs)),
          right(
            before === undefined
              ? ""
              : `${formatPercent(before.runs / before.has)} (${range(before.use)})`,
          ),
          right(`${formatPercent(runs / has)} (${range(use)})`),
        ];
      }),
    ),
    ...everyOption(desk),
  ];
}

// Months of the log, times what the order book has become, beside what the busiest machine can do.
function loadFigure(
  desk: InvestDesk,
  id: string,
  capacity: number,
  { times, title }: { readonly times: number; readonly title: string },
): Block {
  const machine = desk.found.uses[0]?.machine ?? "";
  const months = desk.input.months.map((month) => {
    const { dye, pigment } = through(desk, machine, month);
    return { month: month.month.slice(2), dye: times * dye, pigment: times * pigment };
  });
  const above = months.filter(({ dye, pigment }) => dye + pigment > capacity);
  return {
    kind: "figure",
    id,
    title,
    description: `Months of the log with the lots that may move moved; ${machine} can do ${money(capacity)} m² a month, and ${above.length === 0 ? "no month asks for more" : `more is asked for in ${above.map(({ month }) => month).join(", ")}`}.`,
    chart: {
      kind: "month-load",
      data: { area: `m² a month through ${machine}`, capacity, months },
    },
  };
}

// The order book of a year as a multiple of the logged one.
function ordersIn(desk: InvestDesk, year: number): number {
  const { level, growth } = desk.found.study;
  return level.central * (1 + growth.central) ** year;
}

// Staffed hours times availability of a machine with those bought beside it.
function staffed(desk: InvestDesk, machine: string): number {
  const { study, project } = desk.found;
  return [study.capacity.get(machine), project.option.adds.get(machine)].reduce(
    (sum, one) => sum + (one === undefined ? 0 : one.hours.central * one.availability.central),
    0,
  );
}

// Use of every machine by every option: last year, its busiest month, and how often there is no room.
function everyOption(desk: InvestDesk): readonly Block[] {
  const { lastUses, study } = desk.found;
  const cell = (uses: (typeof lastUses)[number]["uses"], machine: string): string => {
    const one = uses.find((each) => each.machine === machine);
    if (one === undefined) return "–";
    return [one.runs / one.has, one.peak, one.full].map(percent).join(" / ");
  };
  const beyond =
    study.beyond === undefined
      ? "Orders beyond the hours of a machine are cut to what every option can print, so that none earns by printing less; put a price on them under beyond to count them as lost sales (cut) or as printing bought elsewhere (outside)."
      : `Orders beyond the hours of a machine are ${study.beyond.way === "cut" ? "lost" : "bought outside"}, at ${inputText(study.beyond.price.price.central, study.beyond.price.price.unit)} (${study.beyond.price.price.tag}).`;
  return [
    table(
      "machines-options",
      "Use of machines by every option in the last year of its life, percent: of the year, capped at its hours / of the busiest month as asked for, with every lot moved that may / draws in which the year asks for more hours than there are.",
      ["Machine", ...lastUses.map(({ name }) => name)],
      [...study.capacity.keys()].map((machine) => [
        machine,
        ...lastUses.map(({ uses }) => right(cell(uses, machine))),
      ]),
    ),
    paragraph([
      beyond,
      " Months are those of the log: a month that asks for more than its share of the hours is printed ahead or behind, which is not counted in money.",
    ]),
  ];
}

function percent(share: number): string {
  return formatNumber(100 * share, 0);
}

function range({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${formatNumber(100 * low, 0)} to ${formatNumber(100 * high, 0)}\u00a0%`;
}

interface Areas {
  readonly dye: number;
  readonly pigment: number;
  readonly mayMove: number;
}

// Which lots pass a machine: those that leave it are dye, those that come are pigment.
function through(
  desk: InvestDesk,
  machine: string,
  { dye, pigment, mayMove }: Areas,
): { readonly dye: number; readonly pigment: number } {
  const { moving } = desk.found.project.option;
  const leaves = moving.some(({ leavesHours }) => (leavesHours.get(machine)?.central ?? 0) > 0);
  const comes = moving.some(({ comesHours }) => (comesHours.get(machine)?.central ?? 0) > 0);
  return {
    dye: leaves ? dye - mayMove : 0,
    pigment: comes ? pigment + mayMove : 0,
  };
}

function areaPerHour(desk: InvestDesk, hours: number): number {
  const { uses, project } = desk.found;
  const [most] = uses;
  const total = desk.input.months
    .map((month) => through(desk, most?.machine ?? "", month))
    .reduce((sum, { dye, pigment }) => sum + dye + pigment, 0);
  const orders = ordersIn(desk, project.measures.steady.year);
  return hours > 0 ? (total * orders * (most?.has ?? 0)) / hours : 0;
}

function leadBlocks(desk: InvestDesk): readonly Block[] {
  const { lead, project, study } = desk.found;
  const row = (name: string, route: "dye" | "pigment", time: typeof lead.dye) => ({
    name,
    route,
    process: time.process.median,
    queue: time.queue.median,
    given: time.given.median,
    total: time.total,
  });
  const both = [
    row(`dye, ${study.carryOn.name}`, "dye", lead.dye),
    row(`pigment, ${project.option.name}`, "pigment", lead.pigment),
  ];
  const day = study.prices.get("day");
  const lots = project.option.moving.reduce((sum, each) => sum + each.lots * each.share.central, 0);
  const hours = (lead.dye.total[2] ?? 0) - (lead.pigment.total[2] ?? 0);
  return [
    paragraph([
      `A lot that may move takes ${formatNumber(lead.dye.total[2] ?? NaN, 1)} h on its dye route and ${formatNumber(lead.pigment.total[2] ?? NaN, 1)} h on the new one (medians), the wait for busy machines included${waitsWords(desk)}. `,
      day === undefined
        ? "No value is put on a day, so lead time is shown in hours and not counted in money."
        : `At ${inputText(day.price.central, day.price.unit)} it would be worth ${money((hours / 24) * lots * day.price.central)} ${desk.currency} a year for days of 24 h; it is not counted in the NPV.`,
    ]),
    {
      kind: "figure",
      id: "lead-time",
      title:
        "How long a lot takes on each route, hours; bars are medians, boxes all hours together",
      description: both
        .map(
          ({ name, process, queue, given }) =>
            `${name}: ${formatNumber(process, 1)} h on machines, ${formatNumber(queue, 1)} h waiting, ${formatNumber(given, 1)} h for batch and store`,
        )
        .join("; "),
      chart: { kind: "time-boxes", data: { rows: both } },
    },
    table(
      "lead-time-table",
      "Hours of one lot: medians with 10 to 90 % of the draws.",
      ["Route", "On machines", "10 to 90 %", "Waiting", "10 to 90 %", "Batch, store", "10 to 90 %"],
      (
        [
          [`dye, ${study.carryOn.name}`, lead.dye],
          [`pigment, ${project.option.name}`, lead.pigment],
        ] as const
      ).map(([name, { process, queue, given }]) => [
        name,
        right(formatNumber(process.median, 1)),
        right(span(process.low, process.high)),
        right(formatNumber(queue.median, 1)),
        right(span(queue.low, queue.high)),
        right(given.high > 0 ? formatNumber(given.median, 1) : "not given"),
        right(given.high > 0 ? span(given.low, given.high) : ""),
      ]),
      { behind: true },
    ),
  ];
}

function waitsWords(desk: InvestDesk): string {
  const { waits } = desk.found.study;
  const given = Object.values(waits).flatMap(({ batching, store }) =>
    [batching, store].flatMap((one) => (one === undefined ? [] : [one])),
  );
  if (given.length === 0)
    return "; waiting for a batch and lying in store are not, for waits in the file gives no hours; nor is transport";
  return `, and what the file gives: ${given.map((one) => `${one.words} ${inputValue(one, one.central)}`).join("; ")}; what it does not give, and transport, are not`;
}

function inputText(value: number, unit: string): string {
  return `${money(value)}\u00a0${unit}`;
}
