import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { EXIT } from "../../src/cli/exit.js";
import { data, err, out, progress, refuse, tell } from "../../src/cli/say.js";
import type { Problem } from "../../src/problems/problem.js";
import { heard } from "./mills.js";

const PROBLEM: Problem = {
  code: "file-missing",
  severity: "refused",
  file: "log.csv",
  expected: "a log",
  remedy: "Name one.",
};
const WORDS = "log.csv: expected a log. Name one.\n";
/** Start of every sequence that a terminal takes for an order. */
const ESCAPE = "\u001b";
const CLEAR = `\r${ESCAPE}[K`;

function standOn(terminal: boolean, settings: Readonly<Record<string, string>> = {}): void {
  Object.defineProperty(process.stderr, "isTTY", { value: terminal, configurable: true });
  for (const [name, value] of Object.entries({ TERM: "xterm", NO_COLOR: "", ...settings }))
    vi.stubEnv(name, value);
}

const before = Object.getOwnPropertyDescriptor(process.stderr, "isTTY");

beforeEach(() => {
  standOn(false);
});

afterEach(() => {
  vi.unstubAllEnvs();
  if (before === undefined) Reflect.deleteProperty(process.stderr, "isTTY");
  else Object.defineProperty(process.stderr, "isTTY", before);
});

function said(run: () => void): ReturnType<typeof heard> {
  return heard(() => {
    run();
    return EXIT.done;
  });
}

describe("progress", () => {
  it("is silent where no terminal listens, or one that takes no orders", async () => {
    const words = (): void => {
      progress("drawing");
      progress("");
    };
    expect((await said(words)).err).toBe("");
    standOn(true, { TERM: "dumb" });
    expect((await said(words)).err).toBe("");
  });

  it("writes over itself on a terminal and leaves nothing behind", async () => {
    standOn(true);
    const { out: result, err: message } = await said(() => {
      progress("reading the log");
      progress("drawing");
      progress("");
      progress("");
    });
    expect(result).toBe("");
    expect(message).toBe(`${CLEAR}reading the log …${CLEAR}drawing …${CLEAR}`);
  });

  it.each([
    ["a result", () => out("done")],
    ["data", () => data({})],
    ["a message", () => err("done")],
    ["a problem", () => tell([PROBLEM])],
  ])("gives way to %s", async (_, print) => {
    standOn(true);
    const { err: message } = await said(() => {
      progress("drawing");
      print();
    });
    expect(message.startsWith(`${CLEAR}drawing …${CLEAR}`)).toBe(true);
    expect(message.split(CLEAR)).toHaveLength(3);
  });
});

describe("tell", () => {
  it("has colour on a terminal alone, and none where NO_COLOR is set", async () => {
    // no-color.org: any value that is not empty takes colour away.
    expect((await said(() => tell([PROBLEM]))).err).toBe(`refused: ${WORDS}`);
    standOn(true);
    expect((await said(() => tell([PROBLEM]))).err).toBe(
      `${ESCAPE}[31mrefused:${ESCAPE}[0m ${WORDS}`,
    );
    standOn(true, { NO_COLOR: "1" });
    expect((await said(() => tell([PROBLEM]))).err).toBe(`refused: ${WORDS}`);
    standOn(true, { TERM: "dumb" });
    expect((await said(() => tell([PROBLEM]))).err).toBe(`refused: ${WORDS}`);
  });

  it("counts what it does not print", async () => {
    const { err: message } = await said(() => tell([PROBLEM, PROBLEM, PROBLEM], 1));
    expect(message).toBe(`refused: ${WORDS}… and 2 more of the kind.\n`);
  });
});

describe("refuse", () => {
  it("says the same as data where data was asked for", async () => {
    const text = await heard(() => refuse([PROBLEM]));
    expect(text).toEqual({ code: 3, out: "", err: `refused: ${WORDS}` });
    const { code, out: result, err: message } = await heard(() => refuse([PROBLEM], true));
    expect([code, message]).toEqual([3, ""]);
    expect(JSON.parse(result)).toEqual({ problems: [PROBLEM] });
  });
});
