import { numbers } from "../operators.js";
import { arc } from "./arc.js";

const COUNTS: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

const COMMAND = /^[\s,]*([MLHVCSQTAZ])/i;
const NUMBER = /^[\s,]*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)/i;
// The two flags of an arc may be written without a blank after them.
const FLAG = /^[\s,]*([01])/;

/**
 * Turns the data of an SVG path into path operators.
 *
 * Source: SVG 1.1 (second edition) 8.3, path data.
 *
 * @param data - the `d` attribute
 * @returns operators that build the path, without painting it
 * @throws Error when the data breaks off or is not path data: a part of a line must not get lost
 */
export function pathOperators(data: string): string {
  const written: string[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let [controlX, controlY] = [0, 0];
  let previous = "";
  for (const { command, values } of readCommands(data)) {
    const upper = command.toUpperCase();
    const [dx, dy] = command === upper ? [0, 0] : [x, y];
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = values;
    const smooth = upper === "S" ? "CS" : "QT";
    const mirrored = smooth.includes(previous) && previous !== "";
    const [mirrorX, mirrorY] = mirrored ? [2 * x - controlX, 2 * y - controlY] : [x, y];
    const curve = (
      x1: number,
      y1: number,
      x2: number,
      y2: number,
      x3: number,
      y3: number,
    ): void => {
      written.push(`${numbers(x1, y1, x2, y2, x3, y3)} c`);
      [x, y] = [x3, y3];
    };
    const bow = (x1: number, y1: number, x2: number, y2: number): void => {
      [controlX, controlY] = [x1, y1];
      curve(
        x + (2 / 3) * (x1 - x),
        y + (2 / 3) * (y1 - y),
        x2 + (2 / 3) * (x1 - x2),
        y2 + (2 / 3) * (y1 - y2),
        x2,
        y2,
      );
    };
    const line = (toX: number, toY: number): void => {
      [x, y] = [toX, toY];
      written.push(`${numbers(x, y)} l`);
    };
    switch (upper) {
      case "M":
        [x, y, startX, startY] = [a + dx, b + dy, a + dx, b + dy];
        written.push(`${numbers(x, y)} m`);
        break;
      case "L":
        line(a + dx, b + dy);
        break;
      case "H":
        line(a + dx, y);
        break;
      case "V":
        line(x, a + dy);
        break;
      case "C":
        [controlX, controlY] = [c + dx, d + dy];
        curve(a + dx, b + dy, controlX, controlY, e + dx, f + dy);
        break;
      case "S":
        [controlX, controlY] = [a + dx, b + dy];
        curve(mirrorX, mirrorY, controlX, controlY, c + dx, d + dy);
        break;
      case "Q":
        bow(a + dx, b + dy, c + dx, d + dy);
        break;
      case "T":
        bow(mirrorX, mirrorY, a + dx, b + dy);
        break;
      case "A":
        for (const piece of arc([x, y], [a, b], c, d === 1, e === 1, [f + dx, g + dy])) {
          curve(...piece);
        }
        [x, y] = [f + dx, g + dy];
        break;
      default:
        written.push("h");
        [x, y] = [startX, startY];
    }
    previous = upper;
  }
  return written.join(" ");
}

interface Command {
  readonly command: string;
  readonly values: readonly number[];
}

function readCommands(data: string): readonly Command[] {
  const found: Command[] = [];
  let rest = data;
  let command = "";
  const take = (pattern: RegExp): string | undefined => {
    const match = pattern.exec(rest);
    if (match) rest = rest.slice(match[0].length);
    return match?.[1];
  };
  while (/[^\s,]/.test(rest)) {
    const named = take(COMMAND);
    // Further numbers after a move are lines.
    command = named ?? (command === "M" ? "L" : command === "m" ? "l" : command);
    const count = COUNTS[command.toUpperCase()] ?? 0;
    const values = Array.from({ length: count }, (_, index) =>
      Number(take(count === 7 && (index === 3 || index === 4) ? FLAG : NUMBER)),
    );
    const starts = found.length > 0 || command.toUpperCase() === "M";
    if (!starts || (named === undefined && count === 0) || values.some(Number.isNaN)) {
      throw new Error(
        `a drawing has a path with d="${data.slice(0, 60)}", unreadable from "${rest.slice(0, 20)}"; expected SVG path data; correct the drawing`,
      );
    }
    found.push({ command, values });
  }
  return found;
}
