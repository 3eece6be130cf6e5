import type { Drawing } from "../document.js";
import type { BlockOf, Desk } from "./desk.js";
import { draw } from "./drawing/draw.js";
import type { KitElement } from "./kit.js";
import { breakLines } from "./lines.js";
import { numbers } from "./operators.js";
import { textSlices } from "./set-line.js";
import { COLOURS, PAGE, STYLES, WHITE } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { heightOf, tie } from "./slices.js";
import { spans } from "./spans.js";

const UNDER_TITLE = 5;

// Pictures are drawn for a width of 640; narrower ones keep the same size of letters.
const DRAWN_FOR = 640;

/**
 * Sets a figure: its title above, then the picture, on one page.
 *
 * @param block - title, description and picture, or why there is none
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @returns slices that stay together
 */
export function figure(
  block: BlockOf<"figure">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const { drawing } = block;
  const whole = drawing
    ? desk.tree.element("Figure", parent, undefined, `${block.title}. ${block.description}`)
    : desk.tree.element("Div", parent);
  const caption = desk.tree.element(drawing ? "Caption" : "P", whole);
  const style = STYLES.caption;
  const runs = [{ kind: "text", text: block.title } as const];
  const lines = breakLines(spans(runs, style, desk), measure.width);
  const place = desk.places.get(block.id);
  const title = textSlices(lines, style, measure.left, caption, desk).map((slice, index) => ({
    ...slice,
    ...(index === 0 ? { before: WHITE.block } : {}),
    draw: (top: number) => {
      if (index === 0 && place !== undefined) desk.paper.place(place, top - 6);
      slice.draw(top);
    },
  }));
  const room = Math.max(100, desk.height - heightOf(title));
  const body = drawing
    ? [picture(drawing, whole, desk, measure, room)]
    : missing(block.missing ?? block.description, whole, desk, measure);
  return tie([...title, ...body]);
}

function picture(
  drawing: Drawing,
  element: KitElement,
  desk: Desk,
  measure: Measure,
  room: number,
): Slice {
  const scale = Math.min(
    measure.width / Math.max(drawing.width, DRAWN_FOR),
    (room - UNDER_TITLE) / drawing.height,
  );
  if (!(drawing.width > 0 && drawing.height > 0 && scale > 0)) {
    throw new Error(
      `a drawing measures ${drawing.width} × ${drawing.height}; expected both above 0; check the drawing`,
    );
  }
  const [width, height] = [drawing.width * scale, drawing.height * scale];
  return {
    height: height + UNDER_TITLE,
    after: WHITE.block + 6,
    draw: (top) => {
      const [x, y] = [measure.left, top + UNDER_TITLE];
      element.dictionary.data["A"] = {
        O: "Layout",
        Placement: "Block",
        BBox: [x, PAGE.height - y - height, x + width, PAGE.height - y],
      };
      const ground = {
        faces: desk.pen.faces,
        replaced: desk.replaced,
        glyphs: desk.pen.glyphs.bind(desk.pen),
        tile: desk.pen.tile.bind(desk.pen),
      };
      const map = [scale, 0, 0, -scale, x, PAGE.height - y] as const;
      desk.tree.mark(element);
      desk.pen.op(`q ${scale.toFixed(6)} 0 0 ${scale.toFixed(6)} ${numbers(x, y)} cm`);
      desk.pen.op(`${numbers(0, 0, drawing.width, drawing.height)} re W n`);
      desk.pen.op(draw(drawing, ground, map));
      desk.pen.op("Q");
    },
  };
}

function missing(text: string, whole: KitElement, desk: Desk, measure: Measure): readonly Slice[] {
  const style = STYLES.body;
  const inset = 10;
  const element = desk.tree.element("P", whole);
  const runs = [{ kind: "text", text } as const];
  const lines = breakLines(spans(runs, style, desk), measure.width - 2 * inset);
  const frame = { left: measure.left, width: measure.width, weight: 0.5, colour: COLOURS.hair };
  const blank = { height: inset, frames: [frame], draw: () => undefined };
  return [
    { ...blank, before: UNDER_TITLE },
    ...textSlices(lines, style, measure.left + inset, element, desk).map((slice) => ({
      ...slice,
      frames: [frame],
    })),
    { ...blank, after: WHITE.block },
  ];
}
