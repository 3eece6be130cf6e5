import type { Kit } from "./kit.js";

/**
 * Gathers what the library writes.
 *
 * @param kit - a file just opened
 * @returns the bytes, once the file has ended
 */
export function collect(kit: Kit): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    kit.on("data", (chunk) => chunks.push(chunk));
    kit.on("error", reject);
    kit.on("end", () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let offset = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, offset);
        offset += chunk.length;
      }
      resolve(bytes);
    });
  });
}
