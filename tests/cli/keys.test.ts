import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { keys } from "../../src/cli/keys.js";
import { readPrivateKey, readPublicKey, sign, signed } from "../../src/suppliers/signature.js";
import { emptyFolders } from "../tools/command.js";
import { heard } from "./mills.js";

const emptyFolder = emptyFolders();

describe("keys", () => {
  it("makes a pair that fits, the private one for its owner alone, and prints nothing of it", async () => {
    const name = join(emptyFolder(), "mill");
    const { code, out, err } = await heard(() => keys(name, {}));
    expect([code, err]).toEqual([0, ""]);
    const secret = readFileSync(`${name}.private`, "utf8");
    const seed = readPrivateKey("k", secret).value!;
    const key = readPublicKey("k", readFileSync(`${name}.public`, "utf8")).value!;
    expect(signed("x", { ...sign("x", seed), key })).toBe(true);
    expect(out).not.toContain(secret.split("\n")[1]);
    if (process.platform !== "win32") expect(statSync(`${name}.private`).mode & 0o777).toBe(0o600);
  });

  it("prints nothing of it as data either, and makes another pair each time", async () => {
    const folder = emptyFolder();
    const { out } = await heard(() => keys(join(folder, "a"), { json: true }));
    const secret = readFileSync(join(folder, "a.private"), "utf8").split("\n")[1]!;
    expect(out).not.toContain(secret);
    expect(Object.keys(JSON.parse(out) as object)).toEqual(["private", "public", "fingerprint"]);
    await heard(() => keys(join(folder, "b"), {}));
    expect(readFileSync(join(folder, "b.private"), "utf8")).not.toContain(secret);
  });

  it.each(["private", "public"])("writes over no file that ends in .%s", async (ending) => {
    const name = join(emptyFolder(), "mill");
    writeFileSync(`${name}.${ending}`, "mine");
    const { code, err } = await heard(() => keys(name, {}));
    expect(code).toBe(3);
    expect(err).toContain("never written over");
    expect(readFileSync(`${name}.${ending}`, "utf8")).toBe("mine");
    expect(() => statSync(`${name}.${ending === "private" ? "public" : "private"}`)).toThrow();
  });
});
