import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { checkAudience, plantFor, wordingProblems } from "../../src/cli/audience.js";
import { report, type ReportOptions } from "../../src/cli/report.js";
import { type Ended, emptyFolders } from "../tools/command.js";
import { changed, heard, LATE, millIn } from "./mills.js";
import { smallMill } from "../report/compose/small-mill.js";

const PATIENCE = 120_000;
const emptyFolder = emptyFolders();

const LOG = [
  "lot,date,client,order,fabric,fibre,gsm,width_m,length_m,rejected_m,route",
  "AAA-1,2026-03-02,Client Aspen,O-1,twill,cotton,140,1.5,400,4,pigment-calender",
  "AAA-2,2026-04-02,Client Aspen,O-1,twill,cotton,140,1.5,300,0,reactive",
  "ZZZ-1,2026-03-05,Client Zelkova,O-2,satin,cotton,150,1.5,9000,90,reactive",
].join("\n");

const REVIEW = "\nreview: three outside reviewers, May 2026, panel after ISO 14044\n";
const WHAT_IF = "\nscenarios:\n  half the rejects: { rejects: 0.5 }\n";

let mill = "";

beforeAll(() => {
  mill = millIn(emptyFolder());
  writeFileSync(join(mill, "log.csv"), LOG);
  changed(mill, "plant.yaml", (text) => text + REVIEW + WHAT_IF);
});

async function reportFor(
  folder: string,
  more: Partial<ReportOptions>,
): Promise<Ended & { readonly html: string; readonly json: string; readonly aside: boolean }> {
  const out = emptyFolder();
  const options: ReportOptions = {
    ...{ plant: join(folder, "plant.yaml"), out, formats: ["html", "json"], asOf: LATE },
    ...{ per: "m2", draws: 100, seed: 1 },
    ...more,
  };
  const ended = await heard(() => report([], options));
  // Typefaces are letters without words.
  const text = (name: string): string =>
    existsSync(join(out, name))
      ? readFileSync(join(out, name), "utf8").replaceAll(/data:[^)]+/g, "")
      : "";
  const aside = existsSync(join(out, "setaside.csv"));
  return { ...ended, html: text("report.html"), json: text("report.json"), aside };
}

const PRICES = /tariffs\.|\bEUR\b|price of/;

describe("options beside --audience", () => {
  it.each([
    [{ audience: "client" }, /--client NAME/],
    [{ audience: "public", client: "Client Aspen" }, /without --client/],
    [{ audience: "public", order: "O-1" }, /--order/],
    [{ audience: "public", set: ["rejects=2"] }, /forecast/],
    [{ audience: "client", client: "Client Aspen", set: ["rejects=2"] }, /forecast/],
  ] as const)("%j are refused", (options, said) => {
    expect(() => {
      checkAudience(options);
    }).toThrow(said);
  });

  it("are free for the mill itself", () => {
    expect(() => {
      checkAudience({ audience: "internal", client: "Client Aspen", set: ["rejects=2"] });
      checkAudience({});
    }).not.toThrow();
  });
});

describe("a report", { timeout: PATIENCE }, () => {
  it("to the mill holds prices, what-ifs and all clients", async () => {
    const { code, html, json } = await reportFor(mill, {});
    expect(code).toBe(0);
    expect(html).toMatch(PRICES);
    expect(html).toContain("half the rejects");
    expect(html).toContain("Client Zelkova");
    expect(json).toContain('"cost"');
  });

  it("to a client holds no price, no what-if and no other client", async () => {
    const { code, html, json, aside } = await reportFor(mill, {
      audience: "client",
      client: "Client Aspen",
    });
    expect([code, aside]).toEqual([0, false]);
    expect(html).toContain("for Client Aspen");
    expect(html).toContain("Costs and prices are not part of a report to a client.");
    for (const text of [html, json]) {
      expect(PRICES.exec(text)).toBeNull();
      expect(/half the rejects|Zelkova|ZZZ/.exec(text)).toBeNull();
    }
    expect(json).not.toContain('"cost"');
  });

  it("to the public names no client and no lot either", async () => {
    const { code, html, json } = await reportFor(mill, { audience: "public" });
    expect(code).toBe(0);
    expect(html).toContain("three outside reviewers");
    for (const text of [html, json]) {
      expect(PRICES.exec(text)).toBeNull();
      expect(/half the rejects|Aspen|Zelkova|AAA-|ZZZ-/.exec(text)).toBeNull();
    }
  });

  it("to the public is refused without a review, with the reason, and nothing is written", async () => {
    const bare = millIn(emptyFolder());
    const { code, out, err, json } = await reportFor(bare, { audience: "public" });
    expect([code, out, json]).toEqual([3, "", ""]);
    expect(err).toContain("key review");
    expect(err).toContain("when and by which standard");
  });

  it("with a word that may not stand is written for the mill with a warning, and for no one else", async () => {
    const loud = millIn(emptyFolder());
    writeFileSync(join(loud, "log.csv"), LOG);
    changed(loud, "plant.yaml", (text) => text.replace(/^house: .+$/m, "house: Greenest Prints"));
    const own = await reportFor(loud, {});
    expect(own.code).toBe(0);
    expect(own.err).toContain("Greenest");
    const sent = await reportFor(loud, { audience: "client", client: "Client Aspen" });
    expect([sent.code, sent.html]).toEqual([3, ""]);
    expect(sent.err).toContain("wording.allow");
    changed(
      loud,
      "plant.yaml",
      (text) =>
        `${text}\nwording:\n  allow:\n    - { text: Greenest Prints, reason: The name in the register., proof: Register 12 }\n`,
    );
    const proved = await reportFor(loud, { audience: "client", client: "Client Aspen" });
    expect([proved.code, proved.err]).toEqual([0, ""]);
    expect(proved.html).toContain("Register 12");
  });
});

describe("plantFor", () => {
  it("takes prices out of every version of the house", () => {
    const plant = smallMill();
    const dated = { ...plant, versions: [{ from: "", note: "", plant }] };
    expect(JSON.stringify(plant.sites)).toContain("tariffs");
    const shown = plantFor(dated, "client");
    expect(JSON.stringify(shown.sites)).not.toContain("tariffs");
    expect(JSON.stringify(shown.versions?.map((one) => one.plant.sites))).not.toContain("tariffs");
    expect(plantFor(dated, "internal")).toBe(dated);
  });
});

describe("wordingProblems", () => {
  const document = {
    ...{ title: "A green title", author: "", language: "en", date: "", footer: "green" },
    ...{ blocks: [], figures: {} },
  };

  it("names a word once, as a warning to the mill and refused to others", () => {
    expect(wordingProblems(document, [], "internal").map(({ severity }) => severity)).toEqual([
      "warning",
    ]);
    expect(
      wordingProblems(document, [], "public").map(({ value, severity }) => [value, severity]),
    ).toEqual([["green", "refused"]]);
  });
});
