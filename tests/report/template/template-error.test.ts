import { describe, expect, it } from "vitest";
import { TemplateError } from "../../../src/report/template/template-error.js";

describe("TemplateError", () => {
  it("says template and line first", () => {
    const fault = new TemplateError("owner.md", 12, "no such figure");
    expect(fault.message).toBe("owner.md, line 12: no such figure");
    expect([fault.name, fault.template, fault.line]).toEqual(["TemplateError", "owner.md", 12]);
  });

  it("says the template alone where there is no line", () => {
    expect(new TemplateError("owner.md", 0, "it is empty").message).toBe("owner.md: it is empty");
  });
});
