import { describe, expect, it } from "vitest";
import type { DrawingNode } from "../../../../src/report/document.js";
import type { Ground } from "../../../../src/report/pdf/drawing/draw.js";
import { draw } from "../../../../src/report/pdf/drawing/draw.js";
import { Paper } from "../../../../src/report/pdf/paper.js";
import type { Tile } from "../../../../src/report/pdf/tile.js";
import { node } from "../sample-drawing.js";
import { inter, report } from "../sample-text.js";

const { faces } = new Paper(report([]), inter).pen;
const HALF = [0.5, 0, 0, -0.5, 70, 700] as const;

/** Draws on a ground that writes texts down as their face, size, matrix and width. */
function drawn(...children: readonly DrawingNode[]): { operators: string; tiles: readonly Tile[] } {
  const tiles: Tile[] = [];
  const ground: Ground = {
    faces,
    replaced: new Map(),
    glyphs: (face, size, matrix, { width }) =>
      `(${face === faces.semibold ? "semibold" : face === faces.italic ? "italic" : "regular"} ${size} @ ${matrix} w ${(width * size).toFixed(2)})`,
    tile: (tile) => `T${tiles.push(tile)}`,
  };
  return { operators: draw({ width: 100, height: 100, children }, ground, HALF), tiles };
}

function operators(...children: readonly DrawingNode[]): string {
  return drawn(...children).operators;
}

function width(text: string, size: number): number {
  return faces.regular.set(text, false).width * size;
}

describe("shapes", () => {
  it("fills in black and draws no line where nothing is said", () => {
    expect(operators(node("rect", { x: 1, y: 2, width: 3, height: 4 }))).toBe(
      "0 0 0 rg 1 2 3 4 re f",
    );
  });

  it("hands paint down to children, who may change it", () => {
    const written = operators(
      node(
        "g",
        { fill: "#f00", stroke: "rgb(0, 0, 255)", "stroke-width": 2 },
        node("circle", { r: 1, fill: "none" }),
        node("polygon", { points: "0,0 1,0 0,1", stroke: "none" }),
        node("polyline", { points: "0 0 1 0", "stroke-dasharray": "3", "stroke-linecap": "round" }),
      ),
    ).split("\n");
    expect(written[0]).toContain("0 0 1 RG 2 w 0 J 0 j 4 M [] 0 d 1 0 m");
    expect(written[0]).toMatch(/ S$/);
    expect(written[1]).toBe("1 0 0 rg 0 0 m 1 0 l 0 1 l h f");
    expect(written[2]).toBe("0 0 1 RG 2 w 1 J 0 j 4 M [3 3] 0 d 1 0 0 rg 0 0 m 1 0 l B");
  });

  it("never fills a line", () => {
    expect(operators(node("line", { x2: 5, y2: 5, stroke: "black" }))).toMatch(/ S$/);
    expect(operators(node("line", { x2: 5, y2: 5 }))).toBe("");
  });

  it("draws nothing for shapes without extent", () => {
    expect(operators(node("rect", { width: 0, height: 5 }), node("circle", { r: 0 })).trim()).toBe(
      "",
    );
  });

  it("rounds the corners of a rectangle no further than its middle", () => {
    expect(operators(node("rect", { width: 10, height: 4, rx: 99 }))).toContain("5 0 m 5 0 l");
  });

  it("knows currentColor, whatever the order of the attributes", () => {
    expect(
      operators(node("rect", { fill: "currentColor", color: "#ffffff", width: 1, height: 1 })),
    ).toMatch(/^1 1 1 rg/);
  });

  it("fills by the even-odd rule where asked", () => {
    expect(operators(node("path", { d: "M0 0H1V1Z", "fill-rule": "evenodd" }))).toMatch(/ f\*$/);
  });
});

describe("places", () => {
  it("moves within q and Q", () => {
    expect(
      operators(node("g", { transform: "translate(5,6)" }, node("rect", { width: 1, height: 1 }))),
    ).toBe("q\n1 0 0 1 5 6 cm\n0 0 0 rg 0 0 1 1 re f\nQ");
  });

  it("clips to the shapes of a clipPath of the same drawing", () => {
    const clip = node("clipPath", { id: "c" }, node("rect", { width: 7, height: 8 }));
    const shape = node("rect", { width: 1, height: 1, "clip-path": "url(#c)" });
    expect(operators(node("defs", {}, clip), shape)).toBe(
      "q\n0 0 7 8 re W n\n0 0 0 rg 0 0 1 1 re f\nQ",
    );
    expect(() => operators(shape)).toThrow('clip-path="url(#c)"');
  });

  it("hands patterns over with their place on the page", () => {
    const pattern = node(
      "pattern",
      { id: "p", patternUnits: "userSpaceOnUse", width: 6, height: 6, x: 1 },
      node("rect", { width: 2, height: 6, fill: "#000" }),
    );
    const { operators: written, tiles } = drawn(
      pattern,
      node(
        "g",
        { transform: "translate(10,0)" },
        node("rect", { width: 1, height: 1, fill: "url(#p)" }),
      ),
    );
    expect(written).toContain("/Pattern cs /T1 scn 0 0 1 1 re f");
    // 10 from the group and 1 from the pattern, halved and moved to 70.
    expect(tiles).toEqual([
      { size: [6, 6], matrix: [0.5, 0, 0, -0.5, 75.5, 700], operators: "0 0 0 rg 0 0 2 6 re f" },
    ]);
    expect(() => operators(node("rect", { width: 1, height: 1, fill: "url(#q)" }))).toThrow(
      "url(#q)",
    );
  });
});

describe("letters", () => {
  it("stands upright at its place, in its size and face", () => {
    expect(
      operators(node("text", { x: 3, y: 4, "font-size": 10, "font-weight": 600 }, "Ab")),
    ).toMatch(/^BT 0 0 0 rg \(semibold 10 @ 1 0 0 -1 3 4 w [\d.]+\) ET$/);
    expect(operators(node("text", { "font-style": "italic" }, "A"))).toContain("(italic 16 @");
  });

  it("anchors a text at its middle or end", () => {
    const at = (anchor: string): number =>
      Number(
        /-1 (-?[\d.]+) 0 w/.exec(
          operators(node("text", { x: 50, "font-size": 10, "text-anchor": anchor }, "washing")),
        )?.[1],
      );
    expect(at("middle")).toBeCloseTo(50 - width("washing", 10) / 2, 2);
    expect(at("end")).toBeCloseTo(50 - width("washing", 10), 2);
  });

  it("anchors a text with its tspans as one, and starts anew at a place of its own", () => {
    const written = operators(
      node(
        "text",
        { x: 50, y: 10, "font-size": 10, "text-anchor": "end" },
        "one ",
        node("tspan", { fill: "#f00" }, "two"),
        node("tspan", { x: 50, dy: "1.2em" }, "three"),
      ),
    );
    const places = [...written.matchAll(/-1 (-?[\d.]+) (-?[\d.]+) w/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    expect(places[0]?.[0]).toBeCloseTo(50 - width("one ", 10) - width("two", 10), 1);
    expect(places[1]?.[0]).toBeCloseTo(50 - width("two", 10), 1);
    expect(places[2]?.[0]).toBeCloseTo(50 - width("three", 10), 1);
    expect(places.map(([, y]) => y)).toEqual([10, 10, 22]);
    expect(written).toContain("1 0 0 rg");
  });

  it("hangs letters from the line asked for", () => {
    const y = (baseline: string): number =>
      Number(
        /-1 0 (-?[\d.]+) w/.exec(
          operators(node("text", { "font-size": 10, "dominant-baseline": baseline }, "x")),
        )?.[1],
      );
    // Units per em 2048, x-height 1118, ascent 1984, descent -494: the font file's own tables.
    expect(y("middle")).toBeCloseTo((1118 / 2048 / 2) * 10, 2);
    expect(y("central")).toBeCloseTo(((1984 - 494) / 2048 / 2) * 10, 2);
    expect(y("text-before-edge")).toBeCloseTo((1984 / 2048) * 10, 2);
    expect(y("auto")).toBe(0);
  });

  it("draws a halo before the letters", () => {
    const written = operators(
      node(
        "text",
        { fill: "#000", stroke: "#fff", "stroke-width": 3, "paint-order": "stroke" },
        "5.8",
      ),
    );
    expect(written).toMatch(/^BT 1 1 1 RG 3 w 0 j \[\] 0 d 1 Tr \(.*\) 0 Tr 0 0 0 rg \(.*\) ET$/);
  });

  it("reads shifts in em of its own size, whatever the order of the attributes", () => {
    expect(operators(node("text", { dy: "0.5em", "font-size": 12 }, "x"))).toContain(
      "@ 1 0 0 -1 0 6 w",
    );
  });
});

describe("what cannot be drawn", () => {
  const refused: readonly (readonly [string, DrawingNode, string])[] = [
    ["an unknown element", node("foreignObject"), "<foreignObject>"],
    ["an image", node("image", { href: "x.png" }), "<image>"],
    ["a reference", node("use", { href: "#a" }), "<use>"],
    ["a gradient", node("rect", { width: 1, height: 1, fill: "url(#g)" }), "url(#g)"],
    ["a class", node("g", { class: "bar" }), 'class="bar"'],
    ["a style", node("g", { style: "fill:red" }), 'style="fill:red"'],
    ["a marker", node("path", { d: "M0 0", "marker-end": "url(#m)" }), "marker-end"],
    ["a filter", node("g", { filter: "url(#f)" }), "filter"],
    ["glass", node("rect", { opacity: 0.5 }), 'opacity="0.5"'],
    ["glass paint", node("rect", { "fill-opacity": "0.9" }), "fill-opacity"],
    ["a named colour", node("rect", { fill: "tomato" }), 'fill="tomato"'],
    ["a see-through colour", node("rect", { fill: "#11223380" }), "#11223380"],
    ["hidden parts", node("g", { visibility: "hidden" }), "visibility"],
    ["spaced letters", node("text", { "letter-spacing": "2px" }, "a"), "letter-spacing"],
    ["an odd baseline", node("text", { "dominant-baseline": "mathematical" }, "a"), "mathematical"],
    ["a length in percent", node("rect", { width: "100%", height: 1 }), 'width="100%"'],
    ["an inherited name", node("g", { constructor: "x" }), "constructor"],
    ["letters outside a text", node("g", {}, "lost"), "lost"],
    ["an element within letters", node("text", {}, node("a", {}, "x")), "<a>"],
    ["odd points", node("polygon", { points: "1,2 3" }), 'points="1,2 3"'],
    ["a broken number", node("circle", { r: "wide" }), 'r="wide"'],
  ];
  it.each(refused)("%s is refused by name", (_, child, name) => {
    expect(() => operators(child)).toThrow(name);
  });

  it("leaves alone what says nothing about the picture", () => {
    const inert = {
      id: "a",
      role: "img",
      "aria-label": "b",
      "data-lot": "c",
      "pointer-events": "none",
      "font-family": "Inter",
    };
    expect(operators(node("title", {}, "t"), node("g", inert, node("desc", {}, "d")))).toBe("");
  });
});
