import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CsvFault, decoded, lineBreaks } from "../../src/log/decode.js";
import { cut } from "./made.js";

async function text(bytes: Uint8Array, encoding = "utf-8", size?: number): Promise<string> {
  let all = "";
  for await (const piece of decoded(cut(bytes, size), encoding)) all += piece;
  return all;
}

async function fault(bytes: Uint8Array, encoding = "utf-8", size?: number): Promise<string> {
  try {
    await text(bytes, encoding, size);
  } catch (error) {
    if (error instanceof CsvFault) return `${error.code} ${error.line}`;
    throw error;
  }
  return "none";
}

function bytesOf(...parts: readonly (string | readonly number[])[]): Uint8Array {
  return Uint8Array.from(
    parts.flatMap((part) =>
      typeof part === "string" ? [...new TextEncoder().encode(part)] : part,
    ),
  );
}

function wide(content: string, little: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * content.length);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < content.length; i++) view.setUint16(2 * i, content.charCodeAt(i), little);
  return bytes;
}

describe("lineBreaks", () => {
  it("counts them", () => {
    expect([lineBreaks(""), lineBreaks("a"), lineBreaks("a\n"), lineBreaks("\n\nb\n")]).toEqual([
      0, 0, 1, 3,
    ]);
  });
});

describe("decoded", () => {
  it("takes a byte order mark off", async () => {
    expect(await text(bytesOf("\ufefflot\n"))).toBe("lot\n");
    expect(await text(wide("\ufefflot\nä\n", true), "utf-16le")).toBe("lot\nä\n");
    expect(await text(wide("\ufefflot\nä\n", false), "utf-16be")).toBe("lot\nä\n");
  });

  it("lets the mark of UTF-8 overrule the encoding named", async () => {
    expect(await text(bytesOf("\ufeffLänge\n"), "windows-1252")).toBe("Länge\n");
  });

  it("gives every kind of line break as one", async () => {
    expect(await text(bytesOf("a\r\nb\rc\nd"))).toBe("a\nb\nc\nd");
  });

  it("reads windows-1252 by its code page", async () => {
    // 0xE4 is ä and 0x80 the euro sign: Windows-1252, as in the WHATWG Encoding Standard, index windows-1252.
    expect(await text(bytesOf("L", [0xe4], "nge ", [0x80]), "windows-1252")).toBe("Länge €");
  });

  it.each([1, 2, 3, 7, 1000])("names the line of a wrong byte, in chunks of %d", async (size) => {
    const bytes = bytesOf("lot\r\nä1\nä2\nL", [0xe4], "nge\nä4\n");
    expect(await fault(bytes, "utf-8", size)).toBe("log-encoding 4");
  });

  it.each([1, 2, 3, 1000])("names a letter cut off by the end, in chunks of %d", async (size) => {
    expect(await fault(bytesOf("lot\nä\nL", [0xc3]), "utf-8", size)).toBe("log-encoding 3");
    expect(await fault(bytesOf([0xc3]), "utf-8", size)).toBe("log-encoding 1");
  });

  it.each([1, 3, 1000])("names the line of half a pair, in chunks of %d", async (size) => {
    expect(await fault(wide("a\nb\ud83d\nc\n", true), "utf-16le", size)).toBe("log-encoding 2");
  });

  it.each([1, 5, 1000])("names the line of binary data, in chunks of %d", async (size) => {
    expect(await fault(bytesOf("PK\u0003\u0004\n\nab", [0], "c\n"), "utf-8", size)).toBe(
      "log-binary 3",
    );
  });

  it("takes two bytes a letter for a wrong encoding, not for binary data", async () => {
    expect(await fault(wide("\ufefflot\n", true))).toBe("log-encoding 1");
    expect(await fault(wide("\ufefflot\n", false), "windows-1252")).toBe("log-encoding 1");
  });

  it("gives nothing for an empty file", async () => {
    expect(await text(new Uint8Array(0))).toBe("");
  });

  it("gives the same text wherever it is cut, and pieces that end behind a line break", async () => {
    const line = fc.string({ unit: fc.constantFrom("a", "ä", "€", "😀", ",", '"'), maxLength: 8 });
    const lines = fc.array(line, { maxLength: 12 });
    await fc.assert(
      fc.asyncProperty(lines, fc.integer({ min: 1, max: 9 }), async (list, size) => {
        const content = list.join("\n");
        const pieces: string[] = [];
        for await (const piece of decoded(cut(bytesOf(content), size), "utf-8")) pieces.push(piece);
        expect(pieces.join("")).toBe(content);
        for (const piece of pieces.slice(0, -1)) expect(piece.endsWith("\n")).toBe(true);
        expect(await text(wide(content, true), "utf-16le", size)).toBe(content);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
