import { numbers } from "../operators.js";
import type { Attributes } from "./attributes.js";
import { length, refused } from "./attributes.js";
import { pathOperators } from "./path.js";

// Handles of this length, in radii, make four curves look like a circle (from memory: 4/3 (√2 − 1)).
const HANDLE = 0.5522847498;

/**
 * Builds the outline of a shape.
 *
 * @param tag - path, rect, line, circle, ellipse, polygon or polyline
 * @param attributes - its geometry
 * @returns path operators, empty when the shape has no extent; nothing for other elements
 */
export function outline(tag: string, attributes: Attributes): string | undefined {
  const at = (name: string): number => length(attributes, name, 0);
  switch (tag) {
    case "path":
      return pathOperators(attributes["d"] ?? "");
    case "rect":
      return rect(attributes);
    case "line":
      return `${numbers(at("x1"), at("y1"))} m ${numbers(at("x2"), at("y2"))} l`;
    case "circle":
      return ellipse(at("cx"), at("cy"), at("r"), at("r"));
    case "ellipse":
      return ellipse(at("cx"), at("cy"), at("rx"), at("ry"));
    case "polygon":
      return points(attributes, " h");
    case "polyline":
      return points(attributes, "");
    default:
      return undefined;
  }
}

function rect(attributes: Attributes): string {
  const x = length(attributes, "x", 0);
  const y = length(attributes, "y", 0);
  const width = length(attributes, "width", 0);
  const height = length(attributes, "height", 0);
  if (!(width > 0 && height > 0)) return "";
  const one = length(attributes, "rx", length(attributes, "ry", 0));
  const rx = Math.min(one, width / 2);
  const ry = Math.min(length(attributes, "ry", one), height / 2);
  if (!(rx > 0 && ry > 0)) return `${numbers(x, y, width, height)} re`;
  const [right, bottom] = [x + width, y + height];
  const [hx, hy] = [rx * (1 - HANDLE), ry * (1 - HANDLE)];
  return [
    `${numbers(x + rx, y)} m`,
    `${numbers(right - rx, y)} l`,
    `${numbers(right - hx, y, right, y + hy, right, y + ry)} c`,
    `${numbers(right, bottom - ry)} l`,
    `${numbers(right, bottom - hy, right - hx, bottom, right - rx, bottom)} c`,
    `${numbers(x + rx, bottom)} l`,
    `${numbers(x + hx, bottom, x, bottom - hy, x, bottom - ry)} c`,
    `${numbers(x, y + ry)} l`,
    `${numbers(x, y + hy, x + hx, y, x + rx, y)} c h`,
  ].join(" ");
}

function ellipse(cx: number, cy: number, rx: number, ry: number): string {
  if (!(rx > 0 && ry > 0)) return "";
  const [hx, hy] = [rx * HANDLE, ry * HANDLE];
  return [
    `${numbers(cx + rx, cy)} m`,
    `${numbers(cx + rx, cy + hy, cx + hx, cy + ry, cx, cy + ry)} c`,
    `${numbers(cx - hx, cy + ry, cx - rx, cy + hy, cx - rx, cy)} c`,
    `${numbers(cx - rx, cy - hy, cx - hx, cy - ry, cx, cy - ry)} c`,
    `${numbers(cx + hx, cy - ry, cx + rx, cy - hy, cx + rx, cy)} c h`,
  ].join(" ");
}

function points(attributes: Attributes, end: string): string {
  const text = attributes["points"] ?? "";
  const values =
    text.trim() === ""
      ? []
      : text
          .trim()
          .split(/[\s,]+/)
          .map(Number);
  if (values.length % 2 !== 0 || !values.every(Number.isFinite)) {
    throw refused("points", text, "pairs of numbers");
  }
  const corners = values.flatMap((x, index) =>
    index % 2 === 0 ? [`${numbers(x, values[index + 1] ?? 0)} ${index === 0 ? "m" : "l"}`] : [],
  );
  return corners.length > 0 ? corners.join(" ") + end : "";
}
