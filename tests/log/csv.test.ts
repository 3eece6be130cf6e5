import { parse } from "csv-parse/browser/esm/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CsvFault, type CsvRecord, csvRecords } from "../../src/log/csv.js";
import { cut } from "./made.js";

async function recordsOf(text: string, separator?: string, size?: number): Promise<CsvRecord[]> {
  const all: CsvRecord[] = [];
  const chunks = cut(new TextEncoder().encode(text), size);
  for await (const batch of csvRecords(chunks, "utf-8", separator)) all.push(...batch);
  return all;
}

async function fieldsOf(text: string, separator?: string): Promise<(readonly string[])[]> {
  return (await recordsOf(text, separator)).map(({ fields }) => fields);
}

async function faultOf(text: string, size?: number): Promise<string> {
  try {
    await recordsOf(text, undefined, size);
  } catch (error) {
    if (error instanceof CsvFault) return `${error.code} ${error.line}`;
    throw error;
  }
  return "none";
}

describe("csvRecords", () => {
  it.each([",", ";", "\t", "|"])("finds the separator %j from the first line", async (mark) => {
    const expected = [
      ["lot", "note"],
      ["L-1", "a"],
    ];
    expect(await fieldsOf(`lot${mark}note\nL-1${mark}a\n`)).toEqual(expected);
    expect(await fieldsOf(`\n\nlot${mark}note\nL-1${mark}a`)).toEqual(expected);
  });

  it("counts no separator inside a quoted heading", async () => {
    expect(await fieldsOf('"width, m";"length, m, net"\n1;2\n')).toEqual([
      ["width, m", "length, m, net"],
      ["1", "2"],
    ]);
  });

  it("takes the separator named over the one found", async () => {
    expect(await fieldsOf("a,b;c,d\n", ";")).toEqual([["a,b", "c,d"]]);
  });

  it.each(["\n", "\r\n", "\r"])(
    "keeps lines right with line breaks %j and a sep= line",
    async (end) => {
      const text = ["sep=;", "lot;note", '"L-1";"two', 'lines"', "", "L-2;b", ""].join(end);
      expect(await recordsOf(text)).toEqual([
        { fields: ["lot", "note"], line: 2 },
        { fields: ["L-1", "two\nlines"], line: 3 },
        { fields: ["L-2", "b"], line: 6 },
      ]);
    },
  );

  it("reads a byte order mark, doubled quotes, quoted separators and a last line without break", async () => {
    expect(await fieldsOf('\ufefflot,note\n"L-1","a ""b"", c"')).toEqual([
      ["lot", "note"],
      ["L-1", 'a "b", c'],
    ]);
  });

  it("leaves out blank lines but counts them", async () => {
    expect((await recordsOf("lot,note\n\n,\n \nL-1,a\n")).map(({ line }) => line)).toEqual([1, 5]);
  });

  it.each([undefined, 1, 7])(
    "names the line of a quote that never closes, chunks of %j",
    async (size) => {
      expect(await faultOf('lot,note\nL-1,a\n"L-2,b\nL-3,c\n', size)).toBe("log-quote 3");
      expect(await faultOf('lot,note\r\n"L-1","a\r\nb"\r\nL-2,"b\r\nL-3,c\r\n', size)).toBe(
        "log-quote 4",
      );
      // The quote of line 2 closes on line 3, where text goes on behind it: it was forgotten on line 2.
      expect(await faultOf('lot,note\nL-1,"a\nL-2,"b"\nL-3,c\n', size)).toBe("log-quote 2");
    },
  );

  it.each([undefined, 1, 7])(
    "reads a quote inside a cell as it stands, and names the cell, chunks of %j",
    async (size) => {
      const text = 'lot,note\nL-1,12" roll\nL-2,"a ""b"""\nL-3,"12" roll\nL-4,="001"\nL-5,=""\n';
      expect(await recordsOf(text, undefined, size)).toEqual([
        { fields: ["lot", "note"], line: 1 },
        { fields: ["L-1", '12" roll'], line: 2, stray: ['12" roll'], unclear: false },
        { fields: ["L-2", 'a "b"'], line: 3 },
        { fields: ["L-3", '"12" roll'], line: 4, stray: ['"12" roll'], unclear: true },
        { fields: ["L-4", '="001"'], line: 5 },
        { fields: ["L-5", '=""'], line: 6 },
      ]);
    },
  );

  it("leaves out what stands above the line of headings, and counts it", async () => {
    const all: CsvRecord[] = [];
    const text = 'Print log, "north" hall\n\nlot;note\nL-1;a, b\n';
    const above = (content: string, size: number): ReturnType<typeof csvRecords> =>
      csvRecords(cut(new TextEncoder().encode(content), size), "utf-8", undefined, 3);
    for (const size of [1, 5, 99]) {
      all.length = 0;
      for await (const batch of above(text, size)) all.push(...batch);
      expect(all).toEqual([
        { fields: ["lot", "note"], line: 3 },
        { fields: ["L-1", "a, b"], line: 4 },
      ]);
    }
    all.length = 0;
    for await (const batch of above("sep=;\nLog, north\nlot;a,b,c\n", 99)) all.push(...batch);
    expect(all).toEqual([{ fields: ["lot", "a,b,c"], line: 3 }]);
    all.length = 0;
    for await (const batch of above("one\ntwo", 99)) all.push(...batch);
    expect(all).toEqual([]);
    // Rows set aside of the same log come with their headings first.
    for await (const batch of above("\ufeffset-aside-file,lot\nlog.csv,L-1\n", 99))
      all.push(...batch);
    expect(all.map(({ line, fields }) => [line, fields[1]])).toEqual([
      [1, "lot"],
      [2, "L-1"],
    ]);
  });

  // The library reads a quote inside a cell as it stands, as asked here; where a record ends is found
  // without it, and both must agree.
  it("cuts records with quotes anywhere as the library does, or refuses them", async () => {
    const text = fc.string({ unit: fc.constantFrom("a", '"', '"', ",", "\n", "="), maxLength: 24 });
    let read = 0;
    await fc.assert(
      fc.asyncProperty(text, async (log) => {
        if ((await faultOf(log)) !== "none") return;
        read += 1;
        const judge = parse(log, {
          ...{ record_delimiter: "\n", delimiter: ",", relax_quotes: true },
          relax_column_count: true,
        });
        const filled = judge.filter((fields) => fields.some((field) => field.trim() !== ""));
        expect(await fieldsOf(log, ",")).toEqual(filled);
      }),
      { seed: 1, numRuns: 2000 },
    );
    expect(read).toBeGreaterThan(500);
  });

  it("gives an open quote up before the whole file is held", async () => {
    const long = `lot,note\nL-1,a\n"L-2,b\n${"L-3,filler filler filler\n".repeat(400_000)}`;
    let asked = 0;
    async function* counted(): AsyncGenerator<Uint8Array> {
      for await (const chunk of cut(new TextEncoder().encode(long), 1 << 18)) {
        asked += chunk.length;
        yield chunk;
      }
    }
    const drain = async (): Promise<void> => {
      for await (const batch of csvRecords(counted(), "utf-8", ",")) expect(batch).toBeDefined();
    };
    await expect(drain()).rejects.toMatchObject({ code: "log-quote", line: 3 });
    expect(asked).toBeLessThan(long.length / 2);
  });

  it("gives the same records and lines wherever the bytes are cut", async () => {
    const cell = fc
      .string({ unit: fc.constantFrom("a", "ü", "€", ",", ";", '"', "\n", " "), maxLength: 6 })
      .map((text) => `"${text.replaceAll('"', '""')}"`);
    const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 8,
    });
    const end = fc.constantFrom("\n", "\r\n");
    await fc.assert(
      fc.asyncProperty(table, end, fc.integer({ min: 1, max: 12 }), async (rows, eol, size) => {
        const text = rows.map((row) => row.join(",").replaceAll("\n", eol) + eol).join("");
        const whole = await recordsOf(text, ",");
        expect(await recordsOf(text, ",", size)).toEqual(whole);
        // Lines and fields told apart by hand: every cell is quoted, so its breaks are known.
        let line = 1;
        const expected = rows.flatMap((row) => {
          const fields = row.map((quoted) => quoted.slice(1, -1).replaceAll('""', '"'));
          const record = { fields, line };
          line += 1 + fields.join("").split("\n").length - 1;
          return fields.every((field) => field.trim() === "") ? [] : [record];
        });
        expect(whole).toEqual(expected);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  // The library is the judge of what a record is; lines without quotes, or with nothing but quoted fields,
  // are cut without it.
  it("cuts plain lines, quoted ones and mixtures as the library does", async () => {
    const text = fc.string({ unit: fc.constantFrom("a", "ü", ";", " ", "1"), maxLength: 5 });
    const quoted = fc
      .string({ unit: fc.constantFrom("a", ",", '"', "\n", " "), maxLength: 5 })
      .map((cell) => `"${cell.replaceAll('"', '""')}"`);
    const row = fc.oneof(
      fc.array(text, { minLength: 1, maxLength: 4 }),
      fc.array(quoted, { minLength: 1, maxLength: 4 }),
      fc.array(fc.oneof(text, quoted), { minLength: 1, maxLength: 4 }),
    );
    const table = fc.array(row, { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(table, fc.boolean(), async (rows, closed) => {
        const log = rows.map((cells) => cells.join(",")).join("\n") + (closed ? "\n" : "");
        const judge = parse(log, { record_delimiter: "\n", relax_column_count: true });
        const filled = judge.filter((fields) => fields.some((field) => field.trim() !== ""));
        expect(await fieldsOf(log, ",")).toEqual(filled);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it("gives the same records and lines when a log takes several batches", async () => {
    const rows = Array.from({ length: 30_000 }, (_, i) =>
      i % 7 === 0
        ? `L-${i},"first, ""line""\r\nsecond ${i}",ä`
        : `L-${i},a plain note that fills the row ${i},€`,
    );
    const text = `lot,note,sign\r\n${rows.join("\r\n")}\r\n`;
    expect(text.length).toBeGreaterThan(4 * (1 << 18));
    const whole = await recordsOf(text);
    expect(whole).toHaveLength(rows.length + 1);
    // Lot i stands behind the headings and i rows, of which every seventh is two lines long.
    for (const [i, { fields, line }] of whole.slice(1).entries()) {
      if (fields[0] !== `L-${i}` || line !== 2 + i + Math.ceil(i / 7)) {
        throw new Error(`L-${i} was read as ${fields[0] ?? ""} on line ${line}`);
      }
    }
    for (const size of [997, 65_536, 300_001]) {
      expect(await recordsOf(text, undefined, size)).toEqual(whole);
    }
    let batches = 0;
    for await (const batch of csvRecords(cut(new TextEncoder().encode(text), 997), "utf-8", ",")) {
      batches += Math.sign(batch.length);
    }
    expect(batches).toBeGreaterThan(3);
  });
});
