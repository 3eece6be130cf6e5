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
});
