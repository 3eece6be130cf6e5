import { describe, expect, it } from "vitest";
import { outsideAddress } from "../../src/report/address.js";

describe("outsideAddress", () => {
  it("lets https through, in the spelling of the URL standard", () => {
    // WHATWG URL Standard: schemes and hosts are lower case, an empty path is "/", blanks are %20.
    expect(outsideAddress("HTTPS://Example.ORG")).toBe("https://example.org/");
    expect(outsideAddress("https://example.org/a b?c=1&d=2#e")).toBe(
      "https://example.org/a%20b?c=1&d=2#e",
    );
  });

  it.each([
    "http://example.org",
    "mailto:meters@example.org",
    "javascript:alert(1)",
    "data:text/html,x",
    "file:///etc/hosts",
    "//example.org",
    "example.org",
    "https://",
    "#notes",
    "",
  ])("leads nowhere from %j", (href) => {
    expect(outsideAddress(href)).toBeUndefined();
  });
});
