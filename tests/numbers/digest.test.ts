import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Digest, hash64, hash64Bytes, sha256Hex } from "../../src/numbers/digest.js";

describe("sha256Hex", () => {
  // NIST, FIPS 180-4 examples: "abc", the empty message and the 448-bit message.
  it.each([
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
  ])("[P9] of %o", (text, digest) => {
    expect(sha256Hex(text)).toBe(digest);
    expect(sha256Hex(new TextEncoder().encode(text))).toBe(digest);
  });

  it("takes text as UTF-8", () => {
    expect(sha256Hex("Größe ☂")).toBe(createHash("sha256").update("Größe ☂").digest("hex"));
  });
});

describe("Digest", () => {
  it("does not mind where the content was cut", () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 200 }), { maxLength: 8 }), (pieces) => {
        const digest = new Digest();
        for (const piece of pieces) digest.update(piece);
        expect(digest.hex()).toBe(createHash("sha256").update(Buffer.concat(pieces)).digest("hex"));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("can be read before its end", () => {
    const digest = new Digest().update("ab");
    expect(digest.hex()).toBe(sha256Hex("ab"));
    expect(digest.update("c").hex()).toBe(sha256Hex("abc"));
  });
});

describe("hash64", () => {
  // Known answers of MurmurHash3 x86_32 with seed 0 and seed 0x9747b28c, as collected in public test vectors.
  it.each([
    ["test", 0xba6bd213, 0x704b81dc],
    ["Hello, world!", 0xc0363e43, 0x24884cba],
    ["The quick brown fox jumps over the lazy dog", 0x2e4ff723, 0x2fa826cd],
  ])("of %o", (text, first, second) => {
    expect(hash64(text)).toEqual([first, second]);
  });

  // The same vectors: one, two and three bytes with the second seed only.
  it.each([
    ["a", 0x7fa09ea6],
    ["aa", 0x5d211726],
    ["aaa", 0x283e0130],
    ["aaaa", 0x5a97808a],
  ])("of the short text %o", (text, second) => {
    expect(hash64(text)[1]).toBe(second);
  });

  it("is the same for a text and for its bytes, wherever they lie", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 100 }), fc.nat(9), (text, offset) => {
        const bytes = new TextEncoder().encode(text);
        const room = new Uint8Array(bytes.length + 20).fill(99);
        room.set(bytes, offset);
        expect(hash64Bytes(room, offset, offset + bytes.length)).toEqual(hash64(text));
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("takes texts longer than any before", () => {
    const long = "ä".repeat(5000);
    expect(hash64(long)).toEqual(hash64Bytes(new TextEncoder().encode(long), 0, 10_000));
  });

  // 200,000 ids in 1,000 bins of the leading bits: chi squared with 999 degrees of freedom has mean 999
  // and standard deviation 44.7; five of them allowed.
  it("spreads running numbers evenly and without clashes", () => {
    const count = 200_000;
    const bins = new Float64Array(1000);
    const seen = new Set<string>();
    for (let i = 0; i < count; i++) {
      const [first, second] = hash64(`L-2024-${i}`);
      bins[Math.floor((first / 2 ** 32) * 1000)]! += 1;
      seen.add(`${first},${second}`);
    }
    const chiSquared = bins.reduce((sum, n) => sum + (n - count / 1000) ** 2 / (count / 1000), 0);
    expect(Math.abs(chiSquared - 999)).toBeLessThan(5 * 44.7);
    expect(seen.size).toBe(count);
  });
});
