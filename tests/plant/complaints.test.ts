import { describe, expect, it } from "vitest";
import { readYaml } from "../../src/factors/yaml-text.js";
import { Complaints } from "../../src/plant/complaints.js";

function complaints(): Complaints {
  const { value } = readYaml({ name: "plant.yaml", text: "first: 1\nsecond: 2\n" });
  if (value === undefined) throw new Error("no file");
  return new Complaints(value);
}

describe("Complaints", () => {
  it("keep faults in the order of the file", () => {
    const desk = complaints();
    desk.say(["second"], "b", "2", "something", "Do something.");
    desk.say(["first"], "a", "1", "something", "Do something.");
    expect(desk.problems.map(({ code, line }) => [code, line])).toEqual([
      ["a", 1],
      ["b", 2],
    ]);
  });

  it("list a few known names once each, and not many", () => {
    const desk = complaints();
    desk.unknown(["first"], "pat", "a machine", ["pad", "nip", "pad"]);
    const many = Array.from({ length: 30 }, (_, i) => `machine ${i}`);
    desk.unknown(["first"], "flue", "a machine", many);
    expect(desk.problems.map(({ expected, remedy }) => [expected, remedy])).toEqual([
      ["a machine: pad, nip", "Write pad if that was meant."],
      ["a machine", "Correct the name."],
    ]);
  });

  it("let a number inside its limits pass", () => {
    const desk = complaints();
    desk.number(["first"], 1, [0, 2], "kW");
    expect(desk.problems).toEqual([]);
    desk.number(["first"], 3, [0, 2], "kW");
    desk.number(["first"], { value: 1, low: 0 }, [0, 2], "1");
    expect(desk.problems.map(({ value, expected }) => [value, expected])).toEqual([
      ["3", "a value from 0 to 2 in kW"],
      ["0 … 1", "both low and high, or neither,"],
    ]);
  });

  it("say nothing more of a place that was refused, or of what stands in it", () => {
    const desk = complaints();
    desk.refuse(["first"]);
    desk.say(["first", "inside"], "a", "1", "something", "Do something.");
    desk.say(["first"], "a", "1", "something", "Do something.");
    desk.say(["second"], "b", "2", "something", "Do something.");
    expect(desk.problems.map(({ code }) => code)).toEqual(["b"]);
    expect(desk.refused(["first", "inside"])).toBe(true);
    expect(desk.refused(["second"])).toBe(false);
  });

  it("know what was refused inside a place", () => {
    const desk = complaints();
    desk.refuse(["first", "inside", 0]);
    expect(desk.refused(["first"])).toBe(false);
    expect(desk.refusedWithin(["first"])).toBe(true);
    expect(desk.refusedWithin(["second"])).toBe(false);
    expect(desk.refusedUnder(["first", "inside"])).toEqual([0]);
    expect(desk.refusedUnder(["first"])).toEqual([]);
  });

  it("note under a change what was no fault before it, at its place in the change", () => {
    const desk = complaints();
    desk.say(["first"], "a", "1", "something", "Do something.");
    const changed = desk.under(["changes", 2]);
    changed.say(["first"], "a", "1", "something", "Do something.");
    changed.say(["first"], "a", "3", "something", "Do something.");
    expect(changed.problems.map(({ key, value }) => [key, value])).toEqual([
      ["changes[2].first", "3"],
    ]);
    // What the change before said is known to the next one too.
    const next = changed.under(["changes", 0]);
    next.say(["first"], "a", "3", "something", "Do something.");
    expect(next.problems).toEqual([]);
  });

  it("say nothing under a change of what was refused in the change itself", () => {
    const desk = complaints();
    desk.refuse(["changes", 1, "first"]);
    const [other, own] = [0, 1].map((index) => {
      const changed = desk.under(["changes", index]);
      changed.say(["first"], "a", "1", "something", "Do something.");
      return changed.problems.length;
    });
    expect([other, own]).toEqual([1, 0]);
  });
});
