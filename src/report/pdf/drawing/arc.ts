type Point = readonly [number, number];

/** Two control points and the end of a curve. */
export type Curve = readonly [number, number, number, number, number, number];

/**
 * Draws an elliptical arc as curves of at most a quarter turn each.
 *
 * Source: SVG 1.1 (second edition) appendix F.6, elliptical arc implementation notes; the length of
 * the handles is 4/3 tan(angle / 4), the usual approximation of a circle by cubic curves.
 *
 * @param from - start
 * @param radii - half axes; made longer when they cannot reach the end
 * @param turned - angle of the first axis [degrees]
 * @param large - take the longer way
 * @param sweep - go in the direction of growing angles
 * @param to - end
 * @returns curves in order; a straight one when an axis is 0, none when start and end are one
 */
export function arc(
  from: Point,
  radii: Point,
  turned: number,
  large: boolean,
  sweep: boolean,
  to: Point,
): readonly Curve[] {
  const [x1, y1] = from;
  const [x2, y2] = to;
  if (x1 === x2 && y1 === y2) return [];
  let [rx, ry] = [Math.abs(radii[0]), Math.abs(radii[1])];
  if (rx === 0 || ry === 0) return [[x1, y1, x2, y2, x2, y2]];

  const phi = (turned * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const halfX = (cos * (x1 - x2) + sin * (y1 - y2)) / 2;
  const halfY = (cos * (y1 - y2) - sin * (x1 - x2)) / 2;
  const reach = Math.sqrt((halfX / rx) ** 2 + (halfY / ry) ** 2);
  if (reach > 1) [rx, ry] = [rx * reach, ry * reach];

  const across = (rx * halfY) ** 2 + (ry * halfX) ** 2;
  const offset =
    Math.sqrt(Math.max(0, (rx * ry) ** 2 - across) / across) * (large === sweep ? -1 : 1);
  const centreX = (offset * rx * halfY) / ry;
  const centreY = (-offset * ry * halfX) / rx;
  const middleX = cos * centreX - sin * centreY + (x1 + x2) / 2;
  const middleY = sin * centreX + cos * centreY + (y1 + y2) / 2;

  const start = Math.atan2((halfY - centreY) / ry, (halfX - centreX) / rx);
  const end = Math.atan2((-halfY - centreY) / ry, (-halfX - centreX) / rx);
  let turn = end - start;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;

  const count = Math.max(1, Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9));
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  const place = (u: number, v: number): Point => [
    middleX + cos * rx * u - sin * ry * v,
    middleY + sin * rx * u + cos * ry * v,
  ];
  return Array.from({ length: count }, (_, index) => {
    const a = start + index * step;
    const b = a + step;
    const last = index === count - 1;
    return [
      ...place(Math.cos(a) - handle * Math.sin(a), Math.sin(a) + handle * Math.cos(a)),
      ...place(Math.cos(b) + handle * Math.sin(b), Math.sin(b) - handle * Math.cos(b)),
      ...(last ? to : place(Math.cos(b), Math.sin(b))),
    ];
  });
}
