import { describe, expect, it } from "vitest";
import { lineEnd, quotedRecord, scanned, START } from "../../src/log/quotes.js";

describe("scanned", () => {
  it("tells a quote that opens a cell from one inside it", () => {
    const ends = (text: string): readonly number[] => {
      const { end, quote } = scanned(text, START, ",");
      return [end, quote];
    };
    expect(ends('a,5" wide\nb,')).toEqual([10, -1]);
    expect(ends('a,"5 wide\nb,')).toEqual([0, 2]);
    expect(ends('a\n"b ""c""\nd",e\n')).toEqual([16, -1]);
    // With another separator the quote opens nothing.
    expect(scanned('a,"5 wide\nb,', START, ";").quote).toBe(-1);
  });

  it("goes on where it stopped", () => {
    const text = 'a,"b\nc\nd",e\nf,g"\n';
    const whole = scanned(text, START, ",");
    let scan = START;
    for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) {
      scan = scanned(text.slice(0, at + 1), scan, ",");
    }
    expect(scan).toEqual(whole);
    expect(whole).toEqual({ at: text.length, end: text.length, quote: -1 });
  });
});

describe("quotedRecord", () => {
  it("ends behind the line breaks that quotes hold", () => {
    const text = '"a\nb",c\nd\n';
    expect(quotedRecord(text, 0, ",", 1)).toEqual({ end: 7, stray: [], unclear: false });
  });

  it("names every cell with a stray quote, and those that go on behind a closing one", () => {
    const text = 'x\na 1",b,"2" c" d,"e ""f"""\ng';
    expect(quotedRecord(text, 2, ",", 2)).toEqual({
      end: text.lastIndexOf("\n"),
      stray: ['a 1"', '"2" c" d'],
      unclear: true,
    });
  });

  it("takes text marked as text for spreadsheets as it is", () => {
    expect(quotedRecord('="001", ="2",b\n', 0, ",", 1).stray).toEqual([]);
    expect(quotedRecord('="001"x,b\n', 0, ",", 1).stray).toEqual(['="001"x']);
  });

  it.each([
    ['a,b,"c\nd\n', 7],
    ['"a\nb",c,"d\ne" f\n', 8],
  ])("refuses %j on the line where the quote opens", (text, line) => {
    expect(() => quotedRecord(text, 0, ",", 7)).toThrow(`log-quote at line ${line}`);
  });
});

describe("lineEnd", () => {
  it("finds the next line break or the end", () => {
    expect([lineEnd("a\nb", 0), lineEnd("a\nb", 1), lineEnd("a\nb", 2)]).toEqual([1, 1, 3]);
  });
});
