import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkPeriod,
  day,
  mostAside,
  nameOf,
  oneOf,
  settingOf,
  someOf,
  whole,
  WrongWord,
} from "../../src/cli/arguments.js";

/** What a reader says of a word it refuses. */
function refusal(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    expect(error).toBeInstanceOf(WrongWord);
    return (error as WrongWord).message;
  }
  return "was taken";
}

describe("day", () => {
  it("takes every day of the calendar as it is written", () => {
    const days = fc.date({ min: new Date(0), max: new Date("2199-12-31"), noInvalidDate: true });
    fc.assert(
      fc.property(days, (date) => {
        const text = date.toISOString().slice(0, 10);
        expect(day("--from")(text)).toBe(text);
      }),
      { seed: 1, numRuns: 100 },
    );
    expect(day("--from")("2028-02-29")).toBe("2028-02-29");
  });

  it.each(["yesterday", "2026-02-29", "2026-13-01", "2026-1-5", "05.01.2026", "20260105", "", " "])(
    "names the option, the word %j and what is expected",
    (text) => {
      expect(refusal(() => day("--from")(text))).toBe(
        `--from takes a day of the calendar such as 2026-01-31, not ${JSON.stringify(text)}.`,
      );
    },
  );
});

describe("whole", () => {
  const draws = whole("--draws", 100, 1000000);

  it("takes what lies within, both ends included", () => {
    expect([draws("100"), draws("2500"), draws("1000000")]).toEqual([100, 2500, 1000000]);
  });

  it.each(["0", "99", "1000001", "x", "1.5", "1e3", "-100", "", " ", "NaN", "Infinity"])(
    "refuses %j in one line",
    (text) => {
      expect(refusal(() => draws(text))).toBe(
        `--draws takes a whole number from 100 to 1000000, not ${JSON.stringify(text)}.`,
      );
    },
  );
});

describe("words of a short list", () => {
  it("takes one of them", () => {
    expect(oneOf("--per", "m2", "kg")("kg")).toBe("kg");
    expect(refusal(() => oneOf("--per", "m2", "kg")("yard"))).toBe(
      '--per takes one of m2, kg, not "yard".',
    );
  });

  it("takes some of them, blanks between or not", () => {
    const formats = someOf("--formats", "html", "pdf", "json");
    expect(formats("json, html")).toEqual(["json", "html"]);
    for (const text of ["docx", "json,docx", "", "json,"])
      expect(refusal(() => formats(text))).toBe(
        `--formats takes some of html, pdf, json, with commas between, not ${JSON.stringify(text)}.`,
      );
  });
});

describe("nameOf", () => {
  it("refuses to name nobody, as an unset variable of a shell would", () => {
    const client = nameOf("--client", "a client");
    expect(client("Client Alder")).toBe("Client Alder");
    expect(refusal(() => client(""))).toBe('--client takes the name of a client, not "".');
    expect(refusal(() => client("  "))).toContain("--client");
  });
});

describe("mostAside", () => {
  it("takes rows or a share of them", () => {
    expect([mostAside("12"), mostAside("5%"), mostAside("0.5%")]).toEqual(["12", "5%", "0.5%"]);
    expect(refusal(() => mostAside("5x"))).toBe(
      '--max-aside takes a number of rows such as 12, or a share of them such as 5%, not "5x".',
    );
    expect(refusal(() => mostAside("-1"))).toContain("--max-aside");
  });
});

describe("checkPeriod", () => {
  it("refuses a period that ends before it begins, and no other", () => {
    const refused = refusal(() => checkPeriod({ from: "2026-12-01", to: "2026-01-01" }));
    expect(refused).toBe(
      '--to takes a day not before 2026-12-01, which --from names, not "2026-01-01".',
    );
    for (const period of [
      {},
      { from: "2026-12-01" },
      { to: "2026-01-01" },
      { from: "2026-01-01", to: "2026-01-01" },
      { from: "2025-12-31", to: "2026-01-01" },
    ])
      expect(() => checkPeriod(period)).not.toThrow();
  });
});

describe("WrongWord", () => {
  it("keeps control characters from forging lines", () => {
    const { message } = new WrongWord("--client", "a name", "x\nerror: none\u001b[2J");
    expect(message).toBe('--client takes a name, not "x\\nerror: none\\u001b[2J".');
  });

  it("ends with what may have been meant", () => {
    expect(new WrongWord("explain", "one of water", "watr", "Did you mean water?").message).toBe(
      'explain takes one of water, not "watr". Did you mean water?',
    );
  });
});

describe("settingOf", () => {
  it("gathers what is set, the first sign of equality between key and value", () => {
    const read = settingOf("--set");
    expect(read("b=2=3", read("a=1"))).toEqual(["a=1", "b=2=3"]);
    expect(read("a=")).toEqual(["a="]);
  });

  it.each(["", "sites.main.place", "=NOR"])("refuses %j", (text) => {
    expect(refusal(() => settingOf("--set")(text))).toContain("--set takes KEY=VALUE");
  });
});
