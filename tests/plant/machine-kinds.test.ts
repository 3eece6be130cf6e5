import { describe, expect, it } from "vitest";
import { MACHINE_KINDS, served } from "../../src/plant/machine-kinds.js";

describe("served", () => {
  it("gives the step that a machine is named after", () => {
    expect(served("calender")).toEqual(["calender"]);
  });

  it("lets a stenter dry and cure", () => {
    expect(served("stenter")).toEqual(["stenter-dry", "stenter-cure"]);
  });

  it("gives none for a kind that is not known, whatever its name", () => {
    expect(served("calandra")).toEqual([]);
    expect(served("constructor")).toEqual([]);
  });

  it("serves a step with every kind that may be named", () => {
    expect(MACHINE_KINDS.filter((kind) => served(kind).length === 0)).toEqual([]);
  });
});
