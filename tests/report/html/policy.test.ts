import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { policy } from "../../../src/report/html/policy.js";

describe("policy", () => {
  it("knows style and script by their digest and lets nothing else in", () => {
    const digest = (text: string): string =>
      `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;
    const rules = policy("p{color:red}", 'alert("é")').split("; ");
    expect(rules).toEqual([
      "default-src 'none'",
      `style-src ${digest("p{color:red}")}`,
      `script-src ${digest('alert("é")')}`,
      "font-src data:",
      "img-src 'none'",
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });
});
