import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LogDialect } from "../../src/log/dialect.js";
import { OPTIONAL_COLUMNS } from "../../src/log/read-logs.js";
import { sha256Hex } from "../../src/numbers/digest.js";
import { file, HEAD, problemOf, read, row, totals } from "./made.js";
import { mutatedRows } from "./mutated.js";

function log(...rows: readonly string[]): string {
  return `${HEAD}\n${rows.map((one) => `${one}\n`).join("")}`;
}

describe("readLogs", () => {
  it("hands on sound lots and counts the file", async () => {
    const text = log(row(), row({ lot: "L-2" }));
    const { lots, aside, account } = await read([text]);
    expect(lots.map(({ lot, place }) => [lot, place.line])).toEqual([
      ["L-1", 2],
      ["L-2", 3],
    ]);
    expect(aside).toEqual([]);
    expect(account).toMatchObject({ refused: false, problems: [] });
    expect(account.files).toEqual([
      {
        ...{ name: "log-0.csv", bytes: text.length, sha256: sha256Hex(text), unused: [] },
        ...{ rows: 2, accepted: 2, corrected: 0, setAside: 0, outside: 0 },
        reasons: {},
        filled: {
          ...{ lot: 2, date: 2, client: 2, fibre: 2, gsm: 2, width_m: 2, length_m: 2, route: 2 },
        },
      },
    ]);
  });

  it.each([
    [{ length_m: "-3" }, "length_m", "-3", "a length of the lot above 0 m"],
    [{ length_m: "0" }, "length_m", "0", "a length of the lot above 0 m"],
    [{ date: "2026-02-30" }, "date", "2026-02-30", "a day written as ymd"],
    [{ date: "2026-07-01" }, "date", "2026-07-01", "a day not after 2026-06-30"],
    [{ fibre: "silkk" }, "fibre", "silkk", "cotton, viscose, flax"],
    [{ route: "reactiv" }, "route", "reactiv", "pigment-calender, reactive, disperse"],
    [{ gsm: "heavy" }, "gsm", "heavy", "a number"],
    [{ gsm: "#REF!" }, "gsm", "#REF!", "spreadsheet"],
    [{ gsm: "<10" }, "gsm", "<10", "not a limit"],
    [{ gsm: "n/a" }, "gsm", "n/a", "mass per area"],
    [{ rejected_m: "201" }, "rejected_m", "201", "at most the length"],
    [{ fibre: "cotton 60 polyester 30" }, "fibre", "cotton 60 polyester 30", "not 90"],
    [{ width_m: "150 cm" }, "width_m", "150 cm", "a bare number in m"],
  ])(
    "names for %j the file, line, column, value, expectation and remedy",
    async (changes, column, value, expected) => {
      const problem = await problemOf(changes);
      expect(problem).toMatchObject({ file: "log.csv", line: 2, column, value });
      expect(problem.expected).toContain(expected);
      expect(problem.remedy).toMatch(/.\.$/);
    },
  );

  it("gives a row set aside with its fields and reasons, and counts it by code", async () => {
    const { lots, aside, account } = await read([log(row({ length_m: "x" }), row({ lot: "L-2" }))]);
    expect(lots.map(({ lot }) => lot)).toEqual(["L-2"]);
    expect(aside).toMatchObject([
      { file: "log-0.csv", line: 2, problems: [{ code: "not-a-number" }] },
    ]);
    expect(aside[0]?.fields.join(",")).toBe(row({ length_m: "x" }));
    expect([...account.counts]).toEqual([["not-a-number", { severity: "set-aside", count: 1 }]]);
    expect(totals(account)).toEqual({
      rows: 2,
      accepted: 1,
      corrected: 0,
      setAside: 1,
      outside: 0,
    });
  });

  it("counts filled cells of the rows taken, words for blank left out", async () => {
    const { account } = await read([
      log(
        row({ ink_ml: "5" }),
        row({ lot: "L-2", ink_ml: "-" }),
        row({ lot: "L-3", ink_ml: "9", gsm: "x" }),
      ),
    ]);
    expect(account.filled.get("ink_ml")).toBe(1);
    expect(account.filled.get("lot")).toBe(2);
    expect(account.filled.has("note")).toBe(false);
    expect(account.files[0]?.filled).toEqual(Object.fromEntries(account.filled));
    expect(OPTIONAL_COLUMNS).toContain("ink_ml");
    expect(OPTIONAL_COLUMNS).not.toContain("lot");
  });
});

describe("a lot that stands twice", () => {
  it("is counted once when the rows agree, whatever stands in columns not used", async () => {
    const other = "route,length_m,width_m,gsm,fibre,client,date,lot,shift";
    const { lots, account, restarts } = await read([
      log(row(), row()),
      `${other}\n${row({ shift: "early" }, other)}\n`,
    ]);
    expect(lots).toHaveLength(1);
    expect(restarts).toBe(0);
    expect(totals(account)).toEqual({
      rows: 3,
      accepted: 1,
      corrected: 2,
      setAside: 0,
      outside: 0,
    });
    expect(account.problems).toMatchObject([
      {
        code: "lot-repeated",
        severity: "corrected",
        file: "log-0.csv",
        line: 3,
        column: "lot",
        value: "L-1",
      },
      { code: "lot-repeated", severity: "corrected", file: "log-1.csv", line: 2 },
    ]);
  });

  it("is set aside in every row when they differ, the first one too", async () => {
    const { lots, aside, account, restarts } = await read([
      log(row(), row({ lot: "L-2" }), row()),
      log(row({ length_m: "201" })),
    ]);
    expect(restarts).toBe(1);
    expect(lots.map(({ lot }) => lot)).toEqual(["L-2"]);
    expect(aside.map(({ file: name, line }) => [name, line])).toEqual([
      ["log-0.csv", 2],
      ["log-0.csv", 4],
      ["log-1.csv", 2],
    ]);
    expect(totals(account)).toEqual({
      rows: 4,
      accepted: 1,
      corrected: 0,
      setAside: 3,
      outside: 0,
    });
    expect(account.problems).toHaveLength(3);
    expect(account.problems[0]).toMatchObject({
      ...{
        code: "lot-in-conflict",
        severity: "set-aside",
        file: "log-0.csv",
        line: 2,
        column: "lot",
      },
      ...{ value: "L-1", expected: "one content for a lot" },
      remedy: "Rows of this lot differ; keep the right one, or give each its own name.",
    });
  });

  it("is in conflict though one of its rows lies outside the period", async () => {
    const text = log(row(), row({ date: "2026-01-05" }), row({ lot: "L-2" }));
    const { lots, aside, account } = await read([text], {}, { from: "2026-03-01" });
    expect(lots.map(({ lot }) => lot)).toEqual(["L-2"]);
    expect(aside.map(({ line }) => line)).toEqual([2]);
    expect(totals(account)).toMatchObject({ accepted: 1, setAside: 1, outside: 1 });
  });

  it("stays out of the way when all of its rows lie outside the period", async () => {
    const text = log(row({ date: "2026-01-04" }), row({ date: "2026-01-05" }), row({ lot: "L-2" }));
    const { aside, account } = await read([text], {}, { from: "2026-03-01" });
    expect(aside).toEqual([]);
    expect(account.problems).toEqual([]);
    expect(totals(account)).toMatchObject({ rows: 3, accepted: 1, setAside: 0, outside: 2 });
  });

  it("is compared without what is written for spreadsheets alone", async () => {
    const { account } = await read([log(row({ lot: "007" }), row({ lot: '="007"' }))]);
    expect(totals(account)).toMatchObject({ accepted: 1, corrected: 1, setAside: 0 });
    expect(account.problems).toMatchObject([{ code: "lot-repeated", line: 3, value: "007" }]);
  });

  it("is set aside in each of very many", async () => {
    const names = Array.from({ length: 3000 }, (_, i) => `L-${i}`);
    const { account } = await read([
      log(...names.map((lot) => row({ lot }))),
      log(...names.map((lot) => row({ lot, length_m: "201" })), row({ lot: "sound" })),
    ]);
    expect(totals(account)).toMatchObject({ rows: 6001, accepted: 1, setAside: 6000 });
    expect(account.counts.get("lot-in-conflict")?.count).toBe(6000);
  });

  it("is named by the exporter's heading", async () => {
    const dialect: LogDialect = { columns: { lot: "Partie" } };
    const text = log(row(), row()).replace("lot,", "Partie,");
    const { account } = await read([text], dialect);
    expect(account.problems).toMatchObject([{ code: "lot-repeated", column: "Partie" }]);
  });
});

describe("a period", () => {
  it("takes both its ends and counts what is outside", async () => {
    const days = ["2026-02-28", "2026-03-01", "2026-03-31", "2026-04-01"];
    const text = log(...days.map((date, i) => row({ lot: `L-${i}`, date })));
    const period = { from: "2026-03-01", to: "2026-03-31" };
    const { lots, account } = await read([text], {}, period);
    expect(lots.map(({ date }) => date)).toEqual(days.slice(1, 3));
    expect(totals(account)).toEqual({
      rows: 4,
      accepted: 2,
      corrected: 0,
      setAside: 0,
      outside: 2,
    });
    expect((await read([text], {}, { from: "2026-03-31" })).lots).toHaveLength(2);
    expect((await read([text], {}, { to: "2026-02-28" })).lots).toHaveLength(1);
  });
});

describe("a row with faults", () => {
  const period = { from: "2026-03-01", to: "2026-03-31" };

  it.each([
    [{ date: "2026-02-28", length_m: "x" }, "outside"],
    [{ date: "2026-04-01", route: "" }, "outside"],
    [{ date: "2026-03-31", length_m: "x" }, "setAside"],
    // A day that cannot be is no day to judge by, whatever the period.
    [{ date: "2026-02-30", length_m: "x" }, "setAside"],
    [{ date: "2062-03-05" }, "setAside"],
  ] as const)("%j counts as %s", async (changes, fate) => {
    const { aside, account } = await read([log(row({ lot: "L-2" }), row(changes))], {}, period);
    const counts = { rows: 2, accepted: 1, corrected: 0, setAside: 0, outside: 0 };
    expect(totals(account)).toEqual({ ...counts, [fate]: 1 });
    expect(aside).toHaveLength(fate === "setAside" ? 1 : 0);
    expect(account.problems.length > 0).toBe(fate === "setAside");
  });

  it("is set aside when its cells cannot be told apart, wherever its day may lie", async () => {
    const shifted = `${row({ date: "2026-01-05" })},surplus`;
    const unclear = row({ lot: "L-3", date: "2026-01-05", client: '"12" roll"' });
    const { account } = await read([log(shifted, unclear, row())], {}, period);
    expect(totals(account)).toMatchObject({ rows: 3, accepted: 1, setAside: 2, outside: 0 });
  });

  it("is set aside alone for text behind a closing quote, and named", async () => {
    const { lots, aside, account } = await read([
      log(row({ lot: "L-1", note: '"12" roll"' }), row({ lot: "L-2" })),
    ]);
    expect(lots.map(({ lot }) => lot)).toEqual(["L-2"]);
    expect(aside[0]?.fields).toContain('"12" roll"');
    expect(account.problems).toMatchObject([
      {
        ...{ code: "quote-unclear", severity: "set-aside", line: 2, column: "note" },
        value: '"12" roll"',
      },
    ]);
  });
});

describe("a row taken in another way", () => {
  it("keeps a quote inside a cell as it stands", async () => {
    const { lots, account } = await read([log(row({ note: '12" roll' }), row({ lot: "L-2" }))]);
    expect(lots.map(({ note }) => note)).toEqual(['12" roll', ""]);
    expect(totals(account)).toMatchObject({ accepted: 1, corrected: 1, setAside: 0 });
    expect(account.problems).toMatchObject([
      { code: "quote-inside", severity: "corrected", line: 2, column: "note", value: '12" roll' },
    ]);
  });

  it("is accepted with text marked as text for spreadsheets", async () => {
    const { lots, account } = await read([log(row({ lot: '="001"', gsm: '"=""140"""' }))]);
    expect(lots).toMatchObject([{ lot: "001", gsm: 140 }]);
    expect(totals(account)).toMatchObject({ accepted: 1, corrected: 0 });
  });

  it("loses a reading given as a limit, and is not counted as having it", async () => {
    const head = `${HEAD},water_l`;
    const { lots, account } = await read([
      `${head}\n${row({ water_l: "<10" }, head)}\n${row({ lot: "L-2", water_l: "9" }, head)}\n`,
    ]);
    expect(lots.map(({ readings }) => readings.water)).toEqual([undefined, 9]);
    expect(totals(account)).toMatchObject({ accepted: 1, corrected: 1, setAside: 0 });
    expect(account.filled.get("water_l")).toBe(1);
    expect(account.problems).toMatchObject([
      { code: "limit-not-used", severity: "corrected", line: 2, column: "water_l", value: "<10" },
    ]);
  });
});

describe("garbled text", () => {
  it("is pointed out once a file, with its place, and kept", async () => {
    const text = log(
      row(),
      row({ lot: "L-2", client: "GrÃ¼ner Bogen" }),
      row({ lot: "L-3", client: "GrÃ¼ner Bogen", note: "5â€“6" }),
    );
    const { lots, account } = await read([text, `${text}\n`, log(row({ lot: "L-4" }))]);
    expect(lots[1]?.client).toBe("GrÃ¼ner Bogen");
    expect(account.counts.get("text-garbled")).toEqual({ severity: "warning", count: 2 });
    expect(account.problems[0]).toMatchObject({
      ...{ code: "text-garbled", severity: "warning", file: "log-0.csv", line: 3 },
      ...{ column: "client", value: "GrÃ¼ner Bogen" },
    });
    expect(totals(account)).toMatchObject({ accepted: 4, corrected: 3 });
  });

  it("is pointed out in rows that are set aside for it", async () => {
    const { account } = await read([log(row({ fibre: "BaumwÃ¶lle" }))]);
    expect(account.problems.map(({ code }) => code)).toEqual(["text-garbled", "unknown-fibre"]);
  });

  it("is named with the remedy when UTF-8 is read as Windows-1252", async () => {
    const { account } = await read([log(row({ client: "Grüner Bogen" }))], {
      encoding: "windows-1252",
    });
    expect(account.problems).toMatchObject([{ code: "text-garbled", value: "GrÃ¼ner Bogen" }]);
    expect(account.problems[0]?.remedy).toContain("`encoding: utf-8` under `log:`");
  });
});

describe("headings below a title", () => {
  const text = `Print log of the north hall\n\n"Shift; 1, 2"\n${log(row())}`;

  it("are pointed out and not taken", async () => {
    const { lots, account } = await read([text]);
    expect(lots).toEqual([]);
    expect(account.refused).toBe(true);
    expect(account.problems).toMatchObject([
      { code: "headings-below", line: 1, value: "Print log of the north hall" },
    ]);
    expect(account.problems[0]?.remedy).toContain("`heading_line: 4`");
    expect(account.files[0]?.rows).toBe(0);
  });

  it("are read from the line named, and lines are still counted from the top", async () => {
    const { lots, account } = await read([text], { heading_line: 4 });
    expect(lots.map(({ place }) => place.line)).toEqual([5]);
    expect(account.problems).toEqual([]);
  });
});

describe("counts by file", () => {
  it("say what was met in each, and add up to those of all", async () => {
    const { account } = await read([
      log(row({ gsm: "x" }), row({ lot: "L-2", ink_ml: "4" })),
      log(row({ lot: "L-3", gsm: "x" }), row({ lot: "L-4", gsm: "y" })),
    ]);
    expect(account.files.map(({ reasons }) => reasons)).toEqual([
      { "not-a-number": { severity: "set-aside", count: 1 } },
      { "not-a-number": { severity: "set-aside", count: 2 } },
    ]);
    expect(account.counts.get("not-a-number")?.count).toBe(3);
    expect(account.files.map(({ filled }) => filled["ink_ml"])).toEqual([1, undefined]);
  });

  it("have a constant that a column overrules as a warning of its file", async () => {
    const head = HEAD.replace("client,", "");
    const dialect: LogDialect = { constants: { client: "Client Oak" } };
    const { lots, account } = await read(
      [log(row()), `${head}\n${row({ lot: "L-2" }, head)}\n`],
      dialect,
    );
    expect(lots.map(({ client }) => client)).toEqual(["Client Elm", "Client Oak"]);
    expect(account.files.map(({ reasons }) => Object.keys(reasons))).toEqual([
      ["constant-not-used"],
      [],
    ]);
    expect(totals(account)).toMatchObject({ accepted: 2 });
  });
});

describe("a file refused", () => {
  const bytes = new TextEncoder();

  it.each([
    ["empty", "", "log-empty", undefined],
    ["of blank lines", "\n\n,\n", "log-empty", undefined],
    ["of headings alone", `${HEAD}\n`, "log-no-rows", undefined],
    ["without a required column", "lot,date\nL-1,2026-03-14\n", "missing-column", 1],
    ["with an open quote", log(row(), `"${row({ lot: "L-2" })}`), "log-quote", 3],
    ["that is binary", bytes.encode(`PK\u0003\u0004\n${"\u0000".repeat(9)}`), "log-binary", 2],
    [
      "in another encoding",
      Uint8Array.from([...bytes.encode(log(row())), 0xe4, 0x0a]),
      "log-encoding",
      3,
    ],
  ] as const)("%s", async (_, content, code, line) => {
    const { account } = await read([file(content)]);
    expect(account.refused).toBe(true);
    expect(account.problems[0]).toMatchObject({ code, severity: "refused", file: "log.csv" });
    expect(account.problems[0]?.line).toBe(line);
    expect(account.problems[0]?.remedy).toMatch(/\.$/);
  });

  it("that was given twice", async () => {
    const { account } = await read([file(log(row()), "a.csv"), file(log(row()), "b.csv")]);
    expect(account.refused).toBe(true);
    expect(account.problems[0]).toMatchObject({ code: "log-twice", file: "b.csv" });
  });

  it("is not taken for a copy because both fail alike", async () => {
    const heads = `lot,date\n${"L-1,2026-03-14\n".repeat(40_000)}`;
    const { account } = await read([heads, `${heads}L-2,2026-03-14\n`, "", ""]);
    expect(account.counts.has("log-twice")).toBe(false);
    expect(account.counts.get("log-empty")?.count).toBe(2);
    expect(account.files[1]?.sha256).toBe(sha256Hex(`${heads}L-2,2026-03-14\n`));
  });

  it("does not hide what is wrong with the others", async () => {
    const { account } = await read(["lot\nL-1\n", "", `${HEAD}\n`, log(row({ gsm: "x" }))]);
    const codes = new Set(account.problems.map(({ code }) => code));
    expect([...codes]).toEqual(["missing-column", "log-empty", "log-no-rows", "not-a-number"]);
  });
});

describe("a foreign log", () => {
  it("is read by its dialect", async () => {
    const dialect: LogDialect = {
      ...{ separator: ";", decimal: ",", thousands: ".", dates: "dmy", encoding: "windows-1252" },
      columns: {
        ...{ lot: "Partie", date: "Druckdatum", client: "Kunde", fibre: "Faserstoff" },
        gsm: { heading: "Flächengewicht", unit: "oz/yd2" },
        width_m: { heading: "Breite", unit: "cm" },
        length_m: { heading: "Lauflänge", unit: "yd" },
        route: "Verfahren",
      },
      values: { route: { "Pigment – heiß": "pigment-calender" }, fibre: { Baumwolle: "cotton" } },
    };
    const text =
      "Partie;Druckdatum;Kunde;Faserstoff;Flächengewicht;Breite;Lauflänge;Verfahren\r\n" +
      "P-1;05.03.2026;Grüner Bogen;Baumwolle;4,25;152,5;1.250,5;Pigment – heiß\r\n" +
      "P-2;05.03.2026;Grüner Bogen;Baumwolle;4,25;152,5;-1,5;Pigment – heiß\r\n";
    // The dash is 0x96 in Windows-1252; the other letters stand at their ISO 8859-1 places.
    const bytes = Uint8Array.from(Array.from(text), (sign) =>
      sign === "–" ? 0x96 : sign.charCodeAt(0),
    );
    const { lots, account } = await read([file(bytes)], dialect);
    expect(lots).toHaveLength(1);
    expect(lots[0]).toMatchObject({
      lot: "P-1",
      date: "2026-03-05",
      client: "Grüner Bogen",
      route: "pigment-calender",
    });
    // 1 yd = 0.9144 m and 1 oz/yd² = 33.90575 g/m²: NIST Special Publication 811 (2008), appendix B.
    expect(lots[0]?.width).toBeCloseTo(1.525, 12);
    expect(lots[0]?.length).toBeCloseTo(1250.5 * 0.9144, 9);
    expect(lots[0]?.gsm).toBeCloseTo(4.25 * 33.90575, 4);
    expect(account.problems).toMatchObject([
      { code: "length-not-positive", line: 3, column: "Lauflänge", value: "-1,5" },
    ]);
  });
});

describe("counts", () => {
  it("add up in every file, and do not depend on the order of rows or on how they are split", async () => {
    await fc.assert(
      fc.asyncProperty(mutatedRows, fc.boolean(), async ({ rows, shuffled, at }, bounded) => {
        const period = bounded ? { from: "2026-03-10", to: "2026-03-20" } : {};
        const whole = await read([log(...rows)], {}, period);
        // Blank lines at the end keep two equal parts from being the same file twice.
        const parts = [shuffled.slice(0, at), shuffled.slice(at)].filter((part) => part.length > 0);
        const files = parts.map((part, i) => log(...part) + "\n".repeat(i));
        const split = await read(files, {}, period);
        for (const { files: counted } of [whole.account, split.account]) {
          for (const one of counted) {
            expect(one.rows).toBe(one.accepted + one.corrected + one.setAside + one.outside);
          }
        }
        expect(totals(whole.account).rows).toBe(rows.length);
        expect(whole.aside).toHaveLength(totals(whole.account).setAside);
        expect(totals(split.account)).toEqual(totals(whole.account));
        expect(new Map(split.account.counts)).toEqual(new Map(whole.account.counts));
        expect(new Map(split.account.filled)).toEqual(new Map(whole.account.filled));
        const named = (list: typeof whole.lots): unknown[] =>
          list
            .map((lot) => ({ ...lot, place: undefined }))
            .toSorted((a, b) => (a.lot < b.lot ? -1 : 1));
        expect(named(split.lots)).toEqual(named(whole.lots));
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
