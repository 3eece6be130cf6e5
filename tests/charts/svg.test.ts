import { DOMParser } from "linkedom";
import { describe, expect, it } from "vitest";
import type { Drawing, DrawingNode } from "../../src/charts/drawing.js";
import { svgText } from "../../src/charts/svg.js";

const said = { id: "fig-1", title: "Water", description: "Bars" };
const of = (...children: readonly DrawingNode[]): Drawing => ({ width: 640, height: 90, children });
const text = (content: string): DrawingNode => ({
  tag: "text",
  attributes: {},
  children: [content],
});

describe("pictures as text", () => {
  it("are an image with its own title and description", () => {
    expect(svgText(of(text("a")), said)).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 90" role="img"' +
        ' aria-labelledby="fig-1-title fig-1-desc"><title id="fig-1-title">Water</title>' +
        '<desc id="fig-1-desc">Bars</desc><text>a</text></svg>',
    );
  });

  it("do without an empty description", () => {
    const written = svgText(of(), { ...said, description: "" });
    expect(written).toContain('aria-labelledby="fig-1-title"');
    expect(written).not.toContain("<desc");
  });

  it("give back every text as it was, whatever stands in it", () => {
    const hostile = `</text><script>alert("1")</script> & 'x' ]]> \u202f−`;
    const written = svgText(of(text(hostile)), { ...said, title: hostile });
    const parsed = new DOMParser().parseFromString(written, "image/svg+xml");
    expect(parsed.querySelector("script")).toBeNull();
    expect(parsed.querySelector("text")?.textContent).toBe(hostile);
    expect(parsed.querySelector("title")?.textContent).toBe(hostile);
  });

  it("replace characters that no page may hold", () => {
    expect(svgText(of(text("a\u0000b\u0007\ud800c")), said)).toContain("a\ufffdb\ufffd\ufffdc");
  });

  it("put the name of the picture before names within it", () => {
    const written = svgText(
      of(
        { tag: "clipPath", attributes: { id: "part-1" }, children: [] },
        { tag: "g", attributes: { "clip-path": "url(#part-1)" }, children: [text("a")] },
      ),
      said,
    );
    expect(written).toContain('id="fig-1-part-1"');
    expect(written).toContain('clip-path="url(#fig-1-part-1)"');
  });

  it.each(["", "1a", "a b", 'a"'])("refuse the name %j", (id) => {
    expect(() => svgText(of(), { ...said, id })).toThrow("expected a letter");
  });

  it.each<DrawingNode>([
    { tag: "g", attributes: { style: "a" }, children: [] },
    { tag: "g", attributes: { onclick: "a" }, children: [] },
    { tag: "g", attributes: { 'a="b"': "c" }, children: [] },
    { tag: "g><script", attributes: {}, children: [] },
  ])("refuse %j", (node) => {
    expect(() => svgText(of(node), said)).toThrow("expected the name of a plain element");
  });
});
