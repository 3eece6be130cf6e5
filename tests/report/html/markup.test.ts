import fc from "fast-check";
import { parseHTML } from "linkedom";
import { describe, expect, it } from "vitest";
import { element, escaped, joined, trusted } from "../../../src/report/html/markup.js";

describe("escaped", () => {
  it("leaves nothing that HTML reads as markup", () => {
    expect(escaped(`<a href="x">&'</a>`)).toBe("&lt;a href=&quot;x&quot;&gt;&amp;&#39;&lt;/a&gt;");
  });

  it("shows what has no form or turns the reading order", () => {
    expect(escaped("a\u0000\u202eb\ud800\ue000\u0085")).toBe("a\u25a1\u25a1b\u25a1\u25a1\u25a1");
    expect(escaped("e\u0301\r\n")).toBe("\u00e9\n");
    expect(escaped("👩‍🏭 العربية\u200f")).toBe("👩‍🏭 العربية\u200f");
  });

  it("comes back as it was, in an element and in an attribute", () => {
    const plain = fc.string({ unit: "grapheme" }).map((text) => text.normalize("NFC"));
    fc.assert(
      fc.property(plain, (text) => {
        fc.pre(!/[\p{Cc}\p{Co}\u202a-\u202e\u2066-\u2069\ufffe\uffff]/u.test(text));
        const { document } = parseHTML(`<p title="${escaped(text)}">${escaped(text)}</p>`);
        expect(document.querySelector("p")?.textContent).toBe(text);
        expect(document.querySelector("p")?.getAttribute("title")).toBe(text);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe("element", () => {
  it("escapes texts and keeps elements", () => {
    const inside = element("b", {}, "<i>");
    expect(element("p", { class: 'a"b' }, "x & y", inside, [undefined, "z"]).html).toBe(
      '<p class="a&quot;b">x &amp; y<b>&lt;i&gt;</b>z</p>',
    );
    expect(joined("<", trusted("<hr>")).html).toBe("&lt;<hr>");
  });

  it("writes only attributes that are there", () => {
    const attributes = { id: undefined, hidden: true, open: false, start: 0 };
    expect(element("p", attributes).html).toBe('<p hidden start="0"></p>');
    expect(element("meta", { charset: "utf-8" }).html).toBe('<meta charset="utf-8">');
  });
});
