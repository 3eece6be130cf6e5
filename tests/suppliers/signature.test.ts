import fc from "fast-check";
import { createPublicKey, verify } from "node:crypto";
import { describe, expect, it } from "vitest";
import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import { sha256Hex } from "../../src/numbers/digest.js";
import { canonicalText } from "../../src/suppliers/canonical.js";
import {
  fingerprintOf,
  keyFiles,
  readPrivateKey,
  readPublicKey,
  sign,
  signed,
} from "../../src/suppliers/signature.js";

// RFC 8032, 7.1: tests 1 to 3 for Ed25519. Messages are single bytes below 128 or none where they are text.
const VECTORS = [
  {
    seed: "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
    key: "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
    message: "",
    value:
      "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
  },
  {
    seed: "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
    key: "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
    message: "r",
    value:
      "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
  },
] as const;

/** Order of the group. */
const ORDER = 2n ** 252n + 27742317777372353535851937790883648493n;

function flipped(hex: string, bit: number): string {
  const bytes = hexToBytes(hex);
  bytes[bit >> 3] = bytes[bit >> 3]! ^ (1 << (bit & 7));
  return bytesToHex(bytes);
}

describe("signatures", () => {
  it.each(VECTORS)("[P13] RFC 8032 message $message", ({ seed, key, message, value }) => {
    expect(sign(message, hexToBytes(seed))).toEqual({ key, value });
    expect(signed(message, { key, value })).toBe(true);
  });

  // RFC 8032, 7.1, test 3: bytes that are no text, so straight through the library the signatures are made with.
  it("[P13] RFC 8032 test 3", () => {
    const seed = hexToBytes("c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7");
    expect(bytesToHex(ed25519.getPublicKey(seed))).toBe(
      "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
    );
    expect(bytesToHex(ed25519.sign(hexToBytes("af82"), seed))).toBe(
      "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
    );
  });

  it("refuses another message, any bit of R or S turned, and S plus the order of the group", () => {
    const { key, value, message } = VECTORS[1];
    expect(signed("s", { key, value })).toBe(false);
    for (let bit = 0; bit < 512; bit += 7)
      expect(signed(message, { key, value: flipped(value, bit) })).toBe(false);
    for (let bit = 0; bit < 256; bit += 11)
      expect(signed(message, { key: flipped(key, bit), value })).toBe(false);
    const little = [...hexToBytes(value.slice(64))].reverse();
    const s = BigInt(`0x${bytesToHex(Uint8Array.from(little))}`) + ORDER;
    const high = hexToBytes(s.toString(16).padStart(64, "0")).reverse();
    expect(signed(message, { key, value: value.slice(0, 64) + bytesToHex(high) })).toBe(false);
  });

  // The neutral element as key, R neutral and S 0 would sign everything for a careless reader.
  it("refuses a key of small order", () => {
    const neutral = `01${"00".repeat(31)}`;
    expect(signed("anything", { key: neutral, value: neutral + "00".repeat(32) })).toBe(false);
  });

  it.each([
    ["", ""],
    ["zz".repeat(32), "00".repeat(64)],
    ["D7".repeat(32), "00".repeat(64)],
    ["00".repeat(32), "00".repeat(63)],
  ])("refuses what is no key or signature: %s", (key, value) => {
    expect(signed("a", { key, value })).toBe(false);
  });

  // Another implementation: that of Node, which is OpenSSL's.
  it("agrees with another implementation", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), fc.string(), (seed, text) => {
        const { key, value } = sign(text, seed);
        const spki = hexToBytes(`302a300506032b6570032100${key}`);
        const theirs = createPublicKey({ key: Buffer.from(spki), format: "der", type: "spki" });
        expect(verify(null, utf8ToBytes(text), theirs, hexToBytes(value))).toBe(true);
      }),
      { seed: 1, numRuns: 30 },
    );
  });

  // W3C Data Integrity EdDSA Cryptosuites v1.0, 2025, test vectors of eddsa-jcs-2022: document hash, proof
  // hash, and the signature over proof hash and document hash.
  it("[P14] W3C eddsa-jcs-2022", () => {
    const document = {
      "@context": [
        "https://www.w3.org/ns/credentials/v2",
        "https://www.w3.org/ns/credentials/examples/v2",
      ],
      id: "urn:uuid:58172aac-d8ba-11ed-83dd-0b3aef56cc33",
      type: ["VerifiableCredential", "AlumniCredential"],
      name: "Alumni Credential",
      description: "A minimum viable example of an Alumni Credential.",
      issuer: "https://vc.example/issuers/5678",
      validFrom: "2023-01-01T00:00:00Z",
      credentialSubject: { id: "did:example:abcdefgh", alumniOf: "The School of Examples" },
    };
    const hash = sha256Hex(canonicalText(document));
    expect(hash).toBe("59b7cb6251b8991add1ce0bc83107e3db9dbbab5bd2c28f687db1a03abc92f19");
    const input = hexToBytes(
      `66ab154f5c2890a140cb8388a22a160454f80575f6eae09e5a097cabe539a1db${hash}`,
    );
    const seed = hexToBytes("c96ef9ea10c5e414c471723aff9de72c35fa5b70fae97e8832ecac7d2e2b8ed6");
    const key = "b00d8d938e7f773d51565aad36a623f5344f7f5d1960f9cf3e8e12620ea2810f";
    expect(bytesToHex(ed25519.getPublicKey(seed))).toBe(key);
    expect(bytesToHex(ed25519.sign(input, seed))).toBe(
      "407cd12654b33d718ecbb99179a1506daaa849450bf3fc523cce3e1c96f8b80351da3f253d725c6f00b07c9e5448d50b3ef78012b9ab54255116d069c6dd2808",
    );
  });

  // Worked out by two runtimes that are not ours: canonical text, its SHA-256, and its signature under the key
  // of RFC 8032 test 1.
  it("[P15] a small pack", () => {
    const text = canonicalText({
      site: "EXAMPLE-01",
      schema: "print-evidence-pack/0.1",
      route: "pigment-dry-heat",
      period: { start: "2025-01-01", end: "2025-12-31" },
      notes: "Größe 160 cm – ±5 %",
      functionalUnit: "1 m2 printed and fixed fabric",
      energy_MJ_per_m2: 2.4,
      water_L_per_m2: 1.25,
      coverage: { water: 0.82, energy: 0.64 },
    });
    expect(sha256Hex(text)).toBe(
      "ea0717fcd4b07f0e6b544432092746cc4e58bd1a30c64aec5688d56e792cb41c",
    );
    expect(sign(text, hexToBytes(VECTORS[0].seed)).value).toBe(
      "1b01cd3bfaa07e0c2741e8df775353071a79b1a44b80fa22968886d30bafc1987ce95f2d0fb2570e77d04320a7ec16376f756fd5573f7cda8a11a7a48d9afa01",
    );
  });
});

describe("key files", () => {
  const files = keyFiles(hexToBytes(VECTORS[0].seed));

  it("are read back", () => {
    expect(bytesToHex(readPrivateKey("k", files.secret).value!)).toBe(VECTORS[0].seed);
    expect(readPublicKey("k", files.open).value).toBe(VECTORS[0].key);
    expect(readPublicKey("k", files.open.replaceAll("\n", "\r\n")).value).toBe(VECTORS[0].key);
    expect(files.fingerprint).toBe(fingerprintOf(VECTORS[0].key));
    expect(files.fingerprint).toMatch(/^([0-9a-f]{4} ){4}[0-9a-f]{4}$/);
  });

  it("never show the private key outside its file", () => {
    expect(files.open + files.fingerprint).not.toContain(VECTORS[0].seed);
    const wrong = readPublicKey("k", files.secret);
    expect(wrong.value).toBeUndefined();
    expect(JSON.stringify(wrong.problems)).not.toContain(VECTORS[0].seed);
  });

  it.each(["", "something else", `${files.open}more\n`, files.open])(
    "refuse %j as a private key",
    (text) => {
      expect(readPrivateKey("k", text).problems[0]?.code).toBe("key-unreadable");
    },
  );

  it("take 32 bytes", () => {
    expect(() => keyFiles(new Uint8Array(31))).toThrow("32 bytes");
  });
});
