import { describe, expect, it } from "vitest";
import { plainText } from "../../../src/report/wording/plain.js";

const seen = (source: string, markup: "text" | "markdown" | "html"): string =>
  plainText(source, markup).text.replace(/\s+/g, " ").trim();

describe("plainText", () => {
  it("leaves a text as it stands", () => {
    expect(plainText("a <b> *c*", "text").text).toBe("a <b> *c*");
  });

  it("takes the marks out of Markdown and keeps the words", () => {
    const source =
      "# Head\n\n**bold** and _slanted_ [link](https://example.org/x) `code` snake_case\n> quoted\\.";
    expect(seen(source, "markdown")).toBe("Head bold and slanted link code snake_case quoted.");
  });

  it("puts a figure where a template fills one in, and drops its commands", () => {
    expect(seen("{{ saving }} % less{% if x %} water{% endif %}", "markdown")).toBe(
      "0 % less water",
    );
  });

  it("joins what inline elements part, and parts what blocks part", () => {
    expect(plainText("eco<b>log</b>ical<p>x</p>", "html").text).toMatch(/^ecological\n\nx/);
  });

  it("leaves out comments, styles and scripts, and reads what attributes show", () => {
    const source =
      '<style>.green{}</style><!-- eco --><script>"eco"</script><img alt="a green mill" class="eco"><p>end';
    expect(seen(source, "html")).toBe("a green mill end");
  });

  it("reads entities", () => {
    expect(seen("&eacute;co&shy;log&#105;que &amp; &uuml;&#x2d;", "html")).toBe(
      "eco\u00adlogique & u-",
    );
  });

  it("knows where each sign stood", () => {
    const source = 'x<b>y</b>&amp;z <img alt="green">';
    const { text, from, to } = plainText(source, "html");
    for (const word of ["x", "y", "z", "green"]) {
      const at = text.indexOf(word);
      expect(source.slice(from[at], to[at + word.length - 1])).toBe(word);
    }
    const amp = text.indexOf("&");
    expect(source.slice(from[amp], to[amp])).toBe("&amp;");
  });
});
