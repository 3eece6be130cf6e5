import { describe, expect, it } from "vitest";
import { questionWords, testWords } from "../../../src/report/suppliers/flag-words.js";
import { judgeWording } from "../../../src/report/wording/judge.js";
import { type Flag, FLAGS } from "../../../src/suppliers/flags.js";

const flagged = (id: Flag["id"]): Flag => ({ id, outcome: "flag", found: [0.4, 0.5] });

describe("words of the checks", () => {
  it("ask, and blame nobody", () => {
    for (const id of FLAGS) {
      const question = questionWords(flagged(id));
      expect(question).toMatch(/\?/);
      expect(question).not.toMatch(/cheat|fraud|fake|false|manipulat|suspicious|guilt/i);
      expect(
        judgeWording(`${question} ${testWords(id)}`, ["en"], []).found.filter(
          ({ level }) => level === "refused",
        ),
      ).toEqual([]);
    }
  });
});
