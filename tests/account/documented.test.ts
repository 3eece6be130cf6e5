import { describe, expect, it } from "vitest";
import { BROKEN_DOWN } from "../../src/account/account.js";
import { documentedOf } from "../../src/account/documented.js";
import { inputOf, smallMill } from "../report/compose/small-mill.js";

const ARMS = ["pigment", "dye"] as const;

describe("documentedOf", () => {
  it("lies between none and all", () => {
    const { account } = inputOf();
    for (const id of BROKEN_DOWN)
      for (const arm of ARMS) {
        const share = documentedOf(account, id, arm);
        expect(share, `${id} ${arm}`).toBeGreaterThanOrEqual(0);
        expect(share, `${id} ${arm}`).toBeLessThanOrEqual(1);
      }
  });

  it("rises when the mill gives a number of its own", () => {
    // The printer's power has no published source; the mill's own stands for something.
    const before = inputOf(smallMill()).account;
    const after = inputOf(smallMill({ settings: { "printer.power": 30 } })).account;
    for (const arm of ARMS) {
      expect(documentedOf(after, "electricity", arm)).toBeGreaterThan(
        documentedOf(before, "electricity", arm),
      );
    }
  });
});
