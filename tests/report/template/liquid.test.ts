import { describe, expect, it } from "vitest";
import type { TemplateValues } from "../../../src/report/template/liquid.js";
import { fillValues } from "../../../src/report/template/liquid.js";
import { plain } from "../../../src/report/template/marks.js";

const VALUES: TemplateValues = {
  client: "Albers",
  count: 3,
  told: true,
  nothing: null,
  water: { figure: "water", text: "41" },
  names: ["b", "a"],
  rows: [{ name: "L-1", water: { figure: "lot", text: "12" } }],
};

function filled(source: string, values: TemplateValues = VALUES): string {
  const { text, carried } = fillValues(source, "t.md", values);
  return plain(text, carried);
}

describe("fillValues", () => {
  it.each([
    ["{{ client }} {{ water }}", "Albers 41"],
    ["[{{ nothing }}]", "[]"],
    ["{{ nothing | default: 'none' }}", "none"],
    ["{% if count > 2 and told %}many{% endif %}", "many"],
    ["{% case count %}{% when 3 %}three{% else %}other{% endcase %}", "three"],
    ["{% for row in rows %}{{ row.name }}={{ row.water }}{% endfor %}", "L-1=12"],
    ["{% assign it = water %}{{ it }}", "41"],
    ["{{ names | sort | join: ', ' }}", "a, b"],
    ["{{ rows | map: 'name' | first | downcase }}", "l-1"],
    ["{% raw %}{{ client }}{% endraw %}", "{{ client }}"],
    ["{% comment %}secret{% endcomment %}", ""],
  ])("fills %j", (source, text) => {
    expect(filled(source)).toBe(text);
  });

  it("carries a figure as a figure", () => {
    expect(fillValues("{{ water }}", "t.md", VALUES).carried).toEqual([
      { kind: "figure", figure: "water", text: "41" },
    ]);
  });

  it.each([
    ["{{ count }}", "the bare number 3 may not be printed"],
    ["{{ 5 }}", "the bare number 5 may not be printed"],
    ["{{ names | size }}", "the bare number 2 may not be printed"],
    ["{{ water | size }}", "a figure may only be printed"],
    ["{{ water | upcase }}", "a figure may only be printed"],
    ["{{ rows | map: 'water' | join }}", "a figure may only be printed"],
    ["{{ water.text }}", "undefined variable: water.text"],
    ["{{ told }}", "a truth value may not be printed"],
    ["{{ names }}", "a list or group of values may not be printed"],
    ["{{ rows[0] }}", "a list or group of values may not be printed"],
    ["{{ client.constructor }}", "undefined variable"],
    ["{{ rows.__proto__ }}", "undefined variable"],
    ["{{ unknown | default: 'x' }}", "undefined variable: unknown"],
    ["{% if unknown %}x{% endif %}", "undefined variable: unknown"],
    ["{{ client | raw }}", "undefined filter: raw"],
    ["{{ 'now' | date: '%Y' }}", "undefined filter: date"],
    ["{{ names | shuffle }}", "undefined filter: shuffle"],
    ["{% capture x %}y{% endcapture %}", 'the tag "capture" is not allowed'],
    ["{% block x %}y{% endblock %}", 'the tag "block" is not allowed'],
    ["{% increment x %}", 'the tag "increment" is not allowed'],
    ["{% echo client %}", 'the tag "echo" is not allowed'],
    ["{% for i in (1..900000000) %}a{% endfor %}", "limit exceeded"],
    ["{% if told %}", "not closed"],
  ])("refuses %j", (source, complaint) => {
    expect(() => filled(source)).toThrow(complaint);
    expect(() => filled(`first\n${source}`)).toThrow("t.md, line 2: ");
  });
});
