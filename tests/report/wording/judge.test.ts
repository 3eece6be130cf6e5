import { describe, expect, it } from "vitest";
import { BANS } from "../../../src/report/wording/bans.js";
import { judgeWording } from "../../../src/report/wording/judge.js";
import { type Language, LANGUAGES } from "../../../src/report/wording/language.js";

const found = (text: string, ...languages: readonly Language[]): readonly string[] =>
  judgeWording(text, languages).found.map(({ ban, from, to }) => `${ban}: ${text.slice(from, to)}`);

// The sentences are invented. What each ban rests on is named in the list of bans.
describe("words of seven languages", () => {
  it.each<[Language, string, readonly string[]]>([
    [
      "en",
      "Eco-friendly, sustainably made, carbon neutral and biodegradable.",
      [
        "vague: Eco-friendly",
        "sustainable: sustainably",
        "climate-neutral: carbon neutral",
        "degradable: biodegradable",
      ],
    ],
    [
      "de",
      "Umweltfreundliche, nachhaltige und klimaneutrale Stoffe ohne Chemie, grün gedruckt.",
      [
        "vague: Umweltfreundliche",
        "sustainable: nachhaltige",
        "climate-neutral: klimaneutrale",
        "free-of: ohne Chemie",
        "vague: grün",
      ],
    ],
    [
      "fr",
      "Une encre écologique, durable et biodégradable, respectueuse de l’environnement.",
      [
        "vague: écologique",
        "sustainable: durable",
        "degradable: biodégradable",
        "vague: respectueuse de l’environnement",
      ],
    ],
    [
      "it",
      "Stampa sostenibile, a impatto zero, amica dell'ambiente e garantita.",
      [
        "sustainable: sostenibile",
        "zero: impatto zero",
        "vague: amica dell'ambiente",
        "guaranteed: garantita",
      ],
    ],
    [
      "es",
      "Tejidos sostenibles, sin químicos y con neutralidad climática; la huella hídrica es baja.",
      [
        "sustainable: sostenibles",
        "free-of: sin químicos",
        "climate-neutral: neutralidad climática",
        "footprint: huella hídrica",
      ],
    ],
    [
      "pt",
      "Tecido sustentável, amigo do ambiente e com zero resíduos.",
      ["sustainable: sustentável", "vague: amigo do ambiente", "zero: zero resíduos"],
    ],
    [
      "tr",
      "Çevre dostu, sürdürülebilir ve karbon nötr kumaş; SIFIR ATIK, susuz.",
      [
        "vague: Çevre dostu",
        "sustainable: sürdürülebilir",
        "climate-neutral: karbon nötr",
        "zero: SIFIR ATIK",
        "free-of: susuz",
      ],
    ],
  ])("are found in %s", (language, text, expected) => {
    expect(found(text, language)).toEqual(expected);
  });

  it.each<[Language, string]>([
    ["en", "Natural gas, best available techniques and the green thread of a pure cotton cloth."],
    ["de", "Ökonomisch gedruckt; der Nachhaltigkeitsbericht liegt bei. Am grünen Faden erkannt."],
    ["fr", "Nos propres mesures à l'école; le gaz naturel et l'écoulement, le coton est pesé."],
    ["it", "È pure misurato il gas naturale; il responsabile della sala legge il contatore."],
    ["es", "El gas natural se mide; el responsable de la sala lee el contador."],
    ["pt", "O gás natural é medido; o responsável pela sala lê o contador."],
    ["tr", "Doğal gaz sayaçla ölçülür; sürdürülebilirlik raporu ektedir."],
  ])("leave plain %s alone: %s", (language, text) => {
    expect(judgeWording(text, [language]).found).toEqual([]);
  });

  it.each<[Language, string]>([
    ["en", "It saves the water of 20 Olympic pools."],
    ["en", "That is equivalent to taking 30 cars off the road."],
    ["en", "As much as 2,500 trees."],
    ["de", "Das entspricht 12 Badewannen."],
    ["de", "So viel Strom wie 40 Haushalte."],
    ["fr", "L'équivalent de 3 piscines."],
    ["fr", "De quoi remplir 200 baignoires."],
    ["it", "Pari a 15 alberi."],
    ["es", "Equivale a 7 piscinas."],
    ["pt", "Corresponde a 9 carros."],
    ["tr", "20 havuz dolusu su."],
    ["tr", "50 ağaca eşdeğer."],
  ])("refuse equivalents in %s: %s", (language, text) => {
    expect(judgeWording(text, [language]).found.map(({ ban }) => ban)).toContain("equivalent");
  });

  it("refuse the wordings that ISO 14021:1999, 5.3 names as not to be used", () => {
    // ISO 14021:1999, 5.3: its own examples, read in an extract of a national adoption.
    for (const words of [
      "environmentally safe",
      "environmentally friendly",
      "earth friendly",
      "non-polluting",
      "green",
      "nature's friend",
    ])
      expect(found(`A ${words} cloth.`, "en"), words).toHaveLength(1);
  });

  it("name why and what to write for every ban, with at least one reason", () => {
    for (const [id, { why, instead, reasons }] of Object.entries(BANS)) {
      expect(why, id).toMatch(/^[A-Z].+\.$/);
      expect(instead, id).toMatch(/^[A-Z].+[.…]$/);
      expect(reasons.length, id).toBeGreaterThan(0);
    }
  });
});

describe("spellings that read alike", () => {
  it.each([
    ["sus\u00adtain\u00adable", "a soft hyphen"],
    ["SUSTAINABLE", "capitals"],
    ["su\u200bstainable", "a joiner that does not show"],
    ["sust\u0430inable", "a Cyrillic a"],
    ["sustain\u03b1ble", "a Greek alpha"],
    ["ｓｕｓｔａｉｎａｂｌｅ", "wide letters"],
    ["𝐬𝐮𝐬𝐭𝐚𝐢𝐧𝐚𝐛𝐥𝐞", "bold letters of mathematics"],
    ["sustai-\nnable", "a break at the end of a line"],
  ])("%j is found: %s", (word) => {
    const text = `A ${word} print.`;
    const [one, ...more] = judgeWording(text, ["en"]).found;
    expect(more).toEqual([]);
    expect(text.slice(one?.from, one?.to)).toBe(word);
  });

  it("finds accents however they are written, and umlauts spelt with e", () => {
    expect(found("e\u0301cologique", "fr")).toEqual(["vague: e\u0301cologique"]);
    expect(found("umweltvertraegliche, gruene Ware", "de")).toHaveLength(2);
    expect(found("ecologique", "fr")).toHaveLength(1);
  });

  it("does not join words over an empty line or inside longer words", () => {
    expect(found("uses water\n\nfree of charge", "en")).toEqual([]);
    expect(found("evergreen, economy, greenhouse, unnaturally", "en")).toEqual([]);
  });
});

describe("comparisons", () => {
  it.each<[Language, string]>([
    ["en", "Our print takes less water."],
    ["en", "Our print takes 60 % less water."],
    ["en", "Our print saves water compared with dye."],
    ["de", "Weniger Wasser."],
    ["fr", "Moins d’eau."],
    ["it", "Meno energia."],
    ["es", "Menos agua."],
    ["pt", "Menos energia."],
    ["tr", "Daha az su."],
  ])("without figure or basis are a warning in %s: %s", (language, text) => {
    expect(judgeWording(text, [language]).found.map(({ ban, level }) => [ban, level])).toEqual([
      ["comparison", "warning"],
    ]);
  });

  it.each<[Language, string]>([
    ["en", "Pigment lots took 60 % less water than dye lots, 21 against 52 L/m²."],
    ["de", "60 % weniger Wasser als reaktiv gefärbt."],
    ["fr", "60 % moins d'eau par rapport à la route réactive."],
    ["it", "60 % meno acqua rispetto alla via reattiva."],
    ["es", "60 % menos agua que la ruta reactiva."],
    ["pt", "60 % menos água do que a rota reativa."],
    ["tr", "Reaktife göre % 60 daha az su."],
  ])("with both pass in %s: %s", (language, text) => {
    expect(judgeWording(text, [language]).found).toEqual([]);
  });

  it("do not take the 2 of CO2, nor the figure of another sentence", () => {
    expect(found("It is 60 % of dye. Less CO2 than dye.", "en")).toEqual(["comparison: Less CO2"]);
  });
});

describe("phrases with a proof", () => {
  const phrase = {
    text: "zero effluent from fixing",
    reason: "The calender has no water connection.",
    proof: "Machine sheet C-12",
  };

  it("stand word for word, in any case and over the end of a line, and nowhere else", () => {
    const text = "Zero effluent\nfrom fixing. But zero effluent from the site?";
    const { found: left, allowed } = judgeWording(text, ["en"], [phrase]);
    expect(allowed.map(({ phrase: { proof } }) => proof)).toEqual(["Machine sheet C-12"]);
    expect(left.map(({ from, to }) => text.slice(from, to))).toEqual(["zero effluent"]);
    expect(left[0]?.from).toBeGreaterThan(20);
  });

  it("may hold signs that mean something elsewhere", () => {
    const odd = { ...phrase, text: "green (C++) [sic] 100%*" };
    expect(judgeWording("Our green (C++) [sic] 100%* yarn", ["en"], [odd]).found).toEqual([]);
  });
});

describe("speed", () => {
  it("stays in proportion to the text, whatever it holds", () => {
    const hard = [
      "a ".repeat(20_000),
      "1".repeat(40_000),
      "eco-".repeat(10_000),
      " \n".repeat(20_000),
    ];
    const start = performance.now();
    for (const text of hard) judgeWording(text, LANGUAGES);
    // Seconds stand for a blow-up; a quiet machine needs a fraction of one.
    expect(performance.now() - start).toBeLessThan(20_000);
  });
});
