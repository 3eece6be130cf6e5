import { describe, expect, it } from "vitest";
import { garbledCell, garbledText, isGarbled } from "../../src/log/garbled.js";
import { layOut } from "../../src/log/layout.js";
import { windows1252 } from "../../src/log/windows-1252.js";
import { HEAD, row } from "./made.js";

/** What a reader of Windows-1252 makes of a text written as UTF-8. */
function misread(text: string): string {
  return windows1252(new TextEncoder().encode(text));
}

describe("isGarbled", () => {
  it.each(["ä", "ö", "ü", "ß", "Ä", "Ö", "Ü", "é", "à", "ç", "ñ", "ø", "å", "·", "²"])(
    "knows the letter %j read as Windows-1252",
    (letter) => {
      expect(isGarbled(misread(`Fab${letter}ik`))).toBe(true);
      expect(isGarbled(`Fab${letter}ik`)).toBe(false);
    },
  );

  it.each(["ş", "ğ", "ı", "İ", "ł", "ę", "ż", "č", "Ω", "ж", "Я", "“", "’", "–", "…", "€", "™"])(
    "knows %j read as Windows-1252",
    (sign) => {
      expect(isGarbled(misread(`a ${sign} b`))).toBe(true);
    },
  );

  // Hungarian ő and Greek λ give a quotation mark, as may stand behind a capital; their neighbours tell.
  it.each(["vörös erdő", "μαλλί"])("knows the words %j read as Windows-1252", (words) => {
    expect(isGarbled(misread(words))).toBe(true);
  });

  it("knows letters that were lost, and bytes of Windows-1252 taken for ISO 8859-1", () => {
    expect(isGarbled("M\ufffdller")).toBe(true);
    expect(isGarbled("5 \u0096 6")).toBe(true);
    expect(isGarbled("\ufefflot".replace("\ufeff", misread("\ufeff")))).toBe(true);
  });

  // Words and names as they stand in logs of many places, capitals at the end of a word included.
  it.each([
    ...["plain", "Grüner Bogen", "MENÜ–KARTE", "CAFÉ®", "CAFÉ\u00a0»", "Ärmel", "ÅSA", "Señor"],
    ...[
      "ESPAÑA",
      "voilà…",
      "“CORAÇÃO”",
      "PÂTE",
      "Îlot",
      "Łódź",
      "İstanbul",
      "Ðóra",
      "KESÄ – talvi",
    ],
    ...["Ω ink", "Ткань", "布料", "12″ roll", "50 €", "“quoted”", "SÃO", "ÂGE", "20 °C"],
  ])("takes %j as it is", (text) => {
    expect(isGarbled(text)).toBe(false);
  });
});

describe("garbledCell", () => {
  it("gives the first such cell by the heading of its column", () => {
    const { layout } = layOut("log.csv", { fields: HEAD.split(","), line: 1 }, {});
    const cells = row({ client: "GrÃ¼n", note: "Ã¤" }).split(",");
    expect(garbledCell(layout?.columns ?? [], { fields: cells, line: 4 })).toEqual({
      column: "client",
      value: "GrÃ¼n",
    });
    const sound = { fields: row().split(","), line: 5 };
    expect(garbledCell(layout?.columns ?? [], sound)).toBeUndefined();
  });
});

describe("garbledText", () => {
  it("names the place, and a remedy that fits the encoding in use", () => {
    const place = { file: "log.csv", line: 4, column: "client", value: "GrÃ¼n" };
    const other = garbledText(place, "windows-1252");
    expect(other).toMatchObject({ ...place, code: "text-garbled", severity: "warning" });
    expect(other.remedy).toMatch(/^Set `encoding: utf-8` under `log:` in plant.yaml/);
    expect(garbledText(place, "UTF-8").remedy).toContain("export it again as UTF-8");
  });
});
