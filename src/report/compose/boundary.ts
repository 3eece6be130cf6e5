/**
 * The boundary: which steps are counted on which route.
 */

import type { Block } from "../document.js";
import { textCell } from "../figure-desk.js";
import type { ReportDesk } from "./desk.js";
import { stepWords } from "./names.js";
import { ROUTE_NAMES } from "./quantities.js";

/**
 * Steps of both routes: what is counted.
 *
 * @param desk - the report
 * @returns a figure and its table
 */
export function boundaryBlocks(desk: ReportDesk): readonly Block[] {
  const roles = new Map<string, { pigment: boolean; dye: boolean }>();
  const order: string[] = [];
  for (const { arms } of desk.input.account.program.classes) {
    for (const arm of ["dye", "pigment"] as const) {
      let after = -1;
      for (const { role, kind } of arms[arm].steps) {
        if (kind === "stored") continue;
        const at = order.indexOf(role);
        if (at < 0) order.splice(++after, 0, role);
        else after = at;
        const entry = roles.get(role) ?? { pigment: false, dye: false };
        roles.set(role, { ...entry, [arm]: true });
      }
    }
  }
  const standing = (role: string, arm: "pigment" | "dye"): "counted" | "not present" =>
    roles.get(role)?.[arm] === true ? "counted" : "not present";
  return [
    desk.figure(
      "boundary",
      "Steps counted on each route",
      "Boxes in the order cloth takes the steps: counted on a route, or not present there.",
      {
        kind: "boundary-strip",
        data: {
          names: ROUTE_NAMES,
          steps: order.map((role) => ({
            name: stepWords(role),
            dye: standing(role, "dye"),
            pigment: standing(role, "pigment"),
          })),
        },
      },
    ),
    {
      kind: "table",
      id: "boundary-table",
      caption: "Steps counted on each route.",
      behind: true,
      head: ["Step", "Dye", "Pigment"].map((text) => textCell(text)),
      rows: order.map((role) => [
        textCell(stepWords(role), true),
        textCell(standing(role, "dye")),
        textCell(standing(role, "pigment")),
      ]),
    },
  ];
}
