import { DOMParser } from "linkedom";
import { describe, expect, it } from "vitest";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import { normalise } from "../../src/charts/normalise.js";

function parsed(text: string): Element {
  // The package describes its own elements, which have all that is read here.
  const root: unknown = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return root as Element;
}

function svg(inner: string, attributes = ""): Element {
  return parsed(`<svg ${attributes}>${inner}</svg>`);
}

function first(inner: string) {
  const [child] = normalise(svg(inner)).children;
  if (child === undefined || typeof child === "string") throw new Error("no element");
  return child;
}

describe("normalised plots", () => {
  it("keep what a picture may have, and nothing else", () => {
    const root = normalise(
      svg(
        '<style>.a{fill:red}</style><g aria-label="bar" class="a" fill="currentColor"><rect x="1" width="3"/></g>',
        'class="a" width="9" height="9" viewBox="0 0 9 9" fill="currentColor" font-family="x" font-size="10" text-anchor="middle" xmlns="http://www.w3.org/2000/svg"',
      ),
    );
    expect(root).toEqual({
      tag: "g",
      attributes: { "text-anchor": "middle" },
      children: [
        {
          tag: "g",
          attributes: { fill: "#1e2733" },
          children: [{ tag: "rect", attributes: { width: "3", x: "1" }, children: [] }],
        },
      ],
    });
    expect(drawingFaults({ width: 9, height: 9, children: [root] })).toEqual([]);
  });

  it.each([
    ['fill="currentColor"', "#1e2733"],
    ['fill="var(--plot-background)"', "#ffffff"],
    ['fill="white"', "#ffffff"],
    ['fill="#ABC"', "#aabbcc"],
    ['fill="rgb(42, 63, 94)"', "#2a3f5e"],
    ['fill="transparent"', "none"],
    ['style="fill: #2a3f5e; stroke: none"', "#2a3f5e"],
  ])("resolve %s to %s", (written, colour) => {
    expect(first(`<rect ${written}/>`).attributes["fill"]).toBe(colour);
  });

  it("move style properties to attributes", () => {
    expect(first('<text style="font-weight: bold; text-anchor: end">a</text>').attributes).toEqual({
      "font-weight": "600",
      "text-anchor": "end",
    });
  });

  it("round numbers and turn em into units of the letters around", () => {
    expect(first('<path d="M1.23456,2L-1e-9,3.999A5,5,0,1,1,10.006,0"/>').attributes["d"]).toBe(
      "M1.23,2L0,4A5,5,0,1,1,10.01,0",
    );
    expect(first('<text y="0.32em">a</text>').attributes["y"]).toBe("3.52");
    const group = first(
      '<g font-size="20"><text y="0.5em" transform="translate(1.005,2)">a</text></g>',
    );
    const [text] = group.children;
    expect(text).toMatchObject({ attributes: { y: "10" } });
  });

  it("rename what is referred to, the same for every plot", () => {
    const inner = (name: string): string =>
      `<clipPath id="${name}"><rect/></clipPath><g clip-path="url(#${name})"><rect/></g>`;
    expect(normalise(svg(inner("plot-clip-7")))).toEqual(normalise(svg(inner("plot-clip-8"))));
    expect(first(inner("plot-clip-7")).attributes["id"]).toBe("part-1");
  });

  it("drop empty groups and full opacity", () => {
    expect(normalise(svg("<g></g>")).children).toEqual([]);
    expect(first('<rect opacity="1"/>').attributes).toEqual({});
  });

  it.each([
    ["<image/>", "a plot has <image>"],
    ["<foreignObject/>", "a plot has <"],
    ["<script>1</script>", "a plot has <script>"],
    ['<rect onclick="a"/>', 'a plot has <rect onclick="a">'],
    ['<rect filter="url(#a)"/>', 'a plot has <rect filter="url(#a)">'],
    ['<rect style="mix-blend-mode: multiply"/>', "a plot has <rect mix-blend-mode"],
    ['<rect opacity="0.5"/>', 'a plot has opacity="0.5"; expected opaque colours'],
    ['<g stroke-opacity="0.1"><rect/></g>', 'a plot has stroke-opacity="0.1"'],
    ['<rect fill="url(#a)"/>', 'a plot has fill="url(#a)"'],
    ['<rect fill="rgba(0,0,0,.5)"/>', "a plot has fill="],
    ['<rect fill="steelblue"/>', 'a plot has fill="steelblue"'],
    ['<rect width="50%"/>', 'a plot has width="50%"'],
    ['<g clip-path="circle(4px)"><rect/></g>', "a plot has clip-path="],
  ])("refuse %s", (inner, complaint) => {
    expect(() => normalise(svg(inner))).toThrow(complaint);
  });

  it("refuse a plot that is none", () => {
    expect(() => normalise(parsed("<figure/>"))).toThrow("a plot has <figure>");
    expect(() => normalise(svg("<rect/>", 'transform="scale(2)"'))).toThrow("a plain svg element");
  });
});
