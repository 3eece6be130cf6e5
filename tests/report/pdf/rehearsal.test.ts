import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { rehearsal } from "../../../src/report/pdf/rehearsal.js";
import { setPdf } from "../../../src/report/pdf/write-pdf.js";
import { TOP } from "../../tools/tree.js";

const font = (face: string): Uint8Array =>
  readFileSync(join(TOP, `node_modules/@expo-google-fonts/inter/${face}.ttf`));

describe("rehearsal", () => {
  it("can be set, on more than one page, with nothing lost", async () => {
    const fonts = {
      regular: font("400Regular/Inter_400Regular"),
      semibold: font("600SemiBold/Inter_600SemiBold"),
      italic: font("400Regular_Italic/Inter_400Regular_Italic"),
    };
    const { pages, replaced, dead } = await setPdf(rehearsal(), fonts);
    expect(pages).toBeGreaterThan(1);
    expect([...replaced]).toEqual([]);
    expect(dead).toEqual([]);
  });
});
