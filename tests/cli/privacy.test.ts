import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { svgText } from "../../src/charts/svg.js";
import { assess } from "../../src/cli/assess.js";
import { wholeReport } from "../report/compose/whole-report.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { emptyFolders, millrace } from "../tools/command.js";
import { textOf } from "../tools/tree.js";

// Processes are slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const emptyFolder = emptyFolders();
const AS_OF = "2026-11-25";

const LOG = [
  "lot,date,client,order,fabric,fibre,gsm,width_m,length_m,rejected_m,route,reprint_of,note",
  "AAA-1,2026-03-02,Client Aspen,O-Aspen,aspen twill,cotton,140,1.5,400,4,pigment-calender,,aspen note",
  "AAA-2,2026-04-02,Client Aspen,O-Aspen,aspen twill,cotton,140,1.5,300,0,reactive,,",
  "ZZZ-1,2026-03-05,Client Zelkova,O-Zelkova,zelkova satin,cotton,150,1.5,9000,90,reactive,,zelkova note",
  "ZZZ-2,2026-04-05,Client Zelkova,O-Zelkova,zelkova satin,cotton,150,1.5,8000,0,pigment-calender,ZZZ-1,",
  "ZZZ-3,2026-04-07,Client Zelkova,O-Zelkova,zelkova satin,cotton,150,1.5,-3,0,pigment-calender,,",
  "ZZZ-4,2026-04-08,Client Zelkova,O-Zelkova,zelkova satin,zelkova bast,150,1.5,30,0,pigment-calender,,",
].join("\n");

const OF_OTHERS = /zelkova|ZZZ/i;

let folder = "";

function mill(): string {
  const made = join(emptyFolder(), "mill");
  millrace(".", "start", made);
  writeFileSync(join(made, "log.csv"), LOG);
  return made;
}

beforeAll(() => {
  folder = mill();
});

describe("a report for one client", () => {
  const words = ["report", "--as-of", AS_OF, "--draws", "100", "--formats", "json"];

  it("would show the other in a report for all", () => {
    const { code } = millrace(folder, ...words, "--out", "all");
    expect(code).toBe(0);
    const aside = readFileSync(join(folder, "all", "setaside.csv"), "utf8");
    expect(aside).toMatch(OF_OTHERS);
  });

  it("holds nothing of the other in the files it writes", () => {
    const { out } = millrace(folder, ...words, "--out", "one", "--client", "Client Aspen");
    expect(out).toBe(`${join("one", "report.json")}\n`);
    const json = readFileSync(join(folder, "one", "report.json"), "utf8");
    expect(json).toContain("Client Aspen");
    expect(json).not.toMatch(OF_OTHERS);
  });

  it.each([
    { client: "Client Aspen", asked: "client" },
    { order: "O-Aspen", asked: "order" },
  ])("holds nothing of the other in its text and pictures, asked by $asked", async (scope) => {
    const { client, order } = { client: undefined, order: undefined, ...scope };
    const { assessment } = await assess([], {
      plant: join(folder, "plant.yaml"),
      asOf: AS_OF,
      per: "m2",
      draws: 100,
      seed: 1,
      ...(client === undefined ? {} : { client }),
      ...(order === undefined ? {} : { order }),
    });
    expect(assessment).toBeDefined();
    if (assessment === undefined) return;
    const document = wholeReport(assessment.input, textOf("templates/report.md"));
    const html = writeHtml(document, {
      fonts: { regular: "AA==", semibold: "AA==", italic: "AA==" },
      drawingSvg: svgText,
    });
    expect(html).toContain("aspen twill");
    expect(html).not.toMatch(OF_OTHERS);
    expect(JSON.stringify(document)).not.toMatch(OF_OTHERS);
  });
});

describe("an explanation for one client", () => {
  it.each([[], ["--json"]])("holds nothing of the other, in print and as data: %j", (...form) => {
    const words = ["--as-of", AS_OF, "--draws", "100", "--rows", "100", ...form];
    expect(millrace(folder, "explain", "water", ...words).out).toMatch(OF_OTHERS);
    const one = millrace(folder, "explain", "water", ...words, "--client", "Client Aspen");
    expect([one.code, one.err]).toEqual([0, ""]);
    expect(one.out).toContain("AAA-1");
    expect(one.out).not.toMatch(OF_OTHERS);
  });

  it("names nobody when the client is unknown", () => {
    const { code, out, err } = millrace(folder, "explain", "water", "--client", "Client Zelkowa");
    expect([code, out]).toEqual([3, ""]);
    expect(err).not.toMatch(OF_OTHERS);
  });
});
