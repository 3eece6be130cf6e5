import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { loadFactors } from "../../src/factors/load.js";
import { packFactors } from "../../src/factors/packed.js";
import type { TextFile } from "../../src/factors/yaml-text.js";

const SOURCES: TextFile = {
  name: "sources.yaml",
  text: "own-estimate: { author: Millrace, title: Estimate, read: own estimate }\n",
};

const SHARED =
  "shared:\n  from: 2015-01-01\n  entered: 2026-11-25\n  source: own-estimate\n  year: 2026\n  region: world\n" +
  "  quality: { reliability: 5, completeness: 5, time: 4, place: 5, technology: 4 }\n";

const entry = (id: string, unit: string, value: number): string =>
  `  ${id}:\n    words: a number\n    unit: ${unit}\n    plausible: [1, 150]\n    values:\n      - { value: ${value} }\n`;

const PAD: TextFile = {
  name: "pad.yaml",
  text: `${SHARED}factors:\n${entry("pad.speed", "m/min", 25)}${entry("pad.power", "kW", 6)}`,
};

const METER: TextFile = {
  name: "sources.yaml",
  text: "meter: { author: our mill, title: Counter, read: 2026-12-01 }\n",
};

const own = (factors: string): TextFile => ({ name: "mine.yaml", text: SHARED + factors });

const codes = (judged: ReturnType<typeof loadFactors>): string[] =>
  judged.problems.map(({ code }) => code);

describe("loadFactors", () => {
  it("reads shipped files, sources first whatever the order", () => {
    const { value, problems } = loadFactors([PAD, SOURCES], []);
    expect(problems).toEqual([]);
    expect([...(value?.factors.keys() ?? [])]).toEqual(["pad.speed", "pad.power"]);
    expect(value?.sources.get("own-estimate")).toMatchObject({
      title: "Estimate",
      read: "own estimate",
    });
    expect(value?.factors.get("pad.speed")).toMatchObject({
      unit: "m/min",
      overruled: false,
      values: [{ entered: "2026-11-25", spread: { shape: "lognormal", value: 25 } }],
    });
  });

  it("knows the file of sources by its name in any folder", () => {
    for (const name of ["factors/sources.yaml", "C:\\mill\\factors\\sources.yaml"]) {
      expect(loadFactors([PAD, { ...SOURCES, name }], []).problems).toEqual([]);
    }
    expect(codes(loadFactors([PAD, { ...SOURCES, name: "my-sources.yaml" }], []))).toContain(
      "unknown-key",
    );
  });

  it("lets a factor of the user replace the shipped one", () => {
    const file = own(
      "factors:\n  pad.speed:\n    unit: m/min\n    values:\n      - { value: 40, source: meter }\n",
    );
    const { value, problems } = loadFactors([SOURCES, PAD], [METER, file]);
    expect(problems).toEqual([]);
    expect(value?.factors.get("pad.speed")).toMatchObject({
      words: "a number",
      overruled: true,
      values: [{ source: "meter", spread: { value: 40 } }],
    });
    expect(value?.factors.get("pad.power")?.overruled).toBe(false);
    expect(value?.sources.get("meter")?.author).toBe("our mill");
    expect(value?.factors.size).toBe(2);
  });

  it.each(["fibre.kapok.regain", "fuel.peat.co2", "grid.XKX.intensity", "recipe.mine.urea"])(
    "takes %s as new",
    (id) => {
      const { value } = loadFactors([SOURCES, PAD], [own(`factors:\n${entry(id, "g/g", 5)}`)]);
      expect(value?.factors.get(id)).toMatchObject({ overruled: false });
    },
  );

  it("refuses any other unknown id, and names the likely one", () => {
    const file = own(`factors:\n${entry("pad.sped", "m/min", 5)}${entry("loom.colour", "g", 5)}`);
    const { value, problems } = loadFactors([SOURCES, PAD], [file]);
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([
      {
        code: "factor-unknown",
        file: "mine.yaml",
        line: 9,
        value: "pad.sped",
        remedy: "Write pad.speed if that was meant.",
      },
      { code: "factor-unknown", value: "loom.colour", line: 15 },
    ]);
  });

  it("refuses a factor that stands twice, in one file or in two", () => {
    const again = { name: "pad-2.yaml", text: PAD.text };
    const { problems } = loadFactors([SOURCES, PAD, again], []);
    expect(problems.map(({ code, value }) => [code, value])).toEqual([
      ["factor-twice", "pad.speed"],
      ["factor-twice", "pad.power"],
    ]);
    expect(problems[0]?.expected).toContain("pad.yaml, line 9");
    const mine = own(`factors:\n${entry("pad.speed", "m/min", 5)}`);
    expect(codes(loadFactors([SOURCES, PAD], [mine, { ...mine, name: "b.yaml" }]))).toEqual([
      "factor-twice",
    ]);
  });

  it("refuses a source of the user with the key of a shipped one", () => {
    expect(loadFactors([SOURCES, PAD], [SOURCES]).problems).toMatchObject([
      { code: "source-twice", value: "own-estimate", line: 1 },
    ]);
  });

  it("names every fault of every file in one run", () => {
    const bad: TextFile = { name: "bad.yaml", text: "factors: [\n" };
    const odd = own("factros: {}\n");
    const far = own(`factors:\n${entry("pad.speed", "m/min", 500)}`);
    const problems = loadFactors([SOURCES, PAD], [bad, odd, { ...far, name: "far.yaml" }]).problems;
    expect(problems.map(({ file, code }) => [file, code])).toEqual([
      ["bad.yaml", "yaml-syntax"],
      ["mine.yaml", "unknown-key"],
      ["far.yaml", "factor-implausible"],
    ]);
  });

  it("refuses a value whose source is missing or unknown", () => {
    const bare = { ...PAD, text: PAD.text.replace("  source: own-estimate\n", "") };
    expect(codes(loadFactors([SOURCES, bare], []))).toEqual([
      "factor-no-source",
      "factor-no-source",
    ]);
    expect(codes(loadFactors([PAD], []))).toEqual([
      "factor-unknown-source",
      "factor-unknown-source",
    ]);
  });

  it("lets rows with faults through to nobody", () => {
    const table =
      "tables:\n  - id: fibre.*.regain\n    words: regain of *\n    unit: kg/kg\n    plausible: [0, 1]\n" +
      "    columns: [name, value]\n    rows:\n      - [kapok, 0.1]\n      - [jute, wet]\n";
    expect(codes(loadFactors([SOURCES, PAD], [own(table)]))).toEqual(["table-row"]);
  });
});

// As `sha256sum` prints it, by the machine's own SHA-256.
const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

describe("digest of the factors", () => {
  it("is that of the list of files with their digests, sorted by name", () => {
    const list = `${sha256(PAD.text)}  pad.yaml\n${sha256(SOURCES.text)}  sources.yaml\n`;
    expect(loadFactors([SOURCES, PAD], []).value?.digest).toBe(sha256(list));
  });

  it("takes in the files of the user under own/", () => {
    const list =
      `${sha256(METER.text)}  own/sources.yaml\n` +
      `${sha256(PAD.text)}  pad.yaml\n${sha256(SOURCES.text)}  sources.yaml\n`;
    expect(loadFactors([SOURCES, PAD], [METER]).value?.digest).toBe(sha256(list));
  });
});

describe("loadFactors with a pack", () => {
  const fresh = loadFactors([SOURCES, PAD], []).value;
  const pack = packFactors(fresh ?? { factors: new Map(), sources: new Map(), digest: "" });
  // A mark that can only have come from the pack.
  const marked = pack.replace("a number", "a packed number");

  it("takes it for the files it was made from", () => {
    const { value } = loadFactors([SOURCES, PAD], [], marked);
    expect(value?.factors.get("pad.speed")?.words).toBe("a packed number");
    expect(value?.digest).toBe(fresh?.digest);
  });

  it("reads the files when one of them was changed", () => {
    const changed = { ...PAD, text: `${PAD.text}# a remark\n` };
    const { value } = loadFactors([SOURCES, changed], [], marked);
    expect(value?.factors.get("pad.speed")?.words).toBe("a number");
  });

  it("lets the user overrule what is packed", () => {
    const file = own("factors:\n  pad.speed:\n    unit: m/min\n    values:\n      - value: 40\n");
    const { value } = loadFactors([SOURCES, PAD], [file], marked);
    expect(value?.factors.get("pad.speed")).toMatchObject({
      words: "a packed number",
      overruled: true,
    });
  });
});
