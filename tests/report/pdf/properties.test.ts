import { env } from "node:process";
import { afterEach, describe, expect, it } from "vitest";
import { metadata, moment } from "../../../src/report/pdf/properties.js";

const zone = env["TZ"];

afterEach(() => {
  if (zone === undefined) delete env["TZ"];
  else env["TZ"] = zone;
});

describe("moment", () => {
  it("is the same wherever the reader's clock stands", () => {
    env["TZ"] = "Asia/Tokyo";
    expect(new Date(2025, 0, 1).getTimezoneOffset()).toBe(-540);
    expect(moment("2025-07-04").toISOString()).toBe("2025-07-04T00:00:00.000Z");
    expect(moment("2025-07-04T08:30:00").toISOString()).toBe("2025-07-04T08:30:00.000Z");
    expect(moment("2025-07-04T08:30:00+02:00").toISOString()).toBe("2025-07-04T06:30:00.000Z");
  });

  it("refuses what is no date", () => {
    for (const date of ["", "July 2025", "2025-13-40", "04.07.2025"]) {
      expect(() => moment(date)).toThrow("expected ISO 8601");
    }
  });
});

describe("metadata", () => {
  it("escapes every value in the packet and none in the dictionary", () => {
    const { information, xml } = metadata({
      title: "<A&B>\u0000",
      author: `"C" 'D'`,
      language: "en<",
      date: "2025-07-04",
    });
    expect(information["Title"]).toBe("<A&B>\ufffd");
    expect(xml).toContain("&lt;A&amp;B&gt;\ufffd</rdf:li>");
    expect(xml).toContain("&quot;C&quot; &apos;D&apos;");
    expect(xml).toContain("<rdf:li>en&lt;</rdf:li>");
    expect(xml).toContain("<pdfuaid:part>1</pdfuaid:part>");
  });
});
