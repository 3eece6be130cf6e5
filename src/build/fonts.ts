import subsetFont from "subset-font";
import { PAGE_LETTERS, PRINT_LETTERS } from "./repertoire.js";

/** Faces of the report by the name of their files. */
export const FACES = {
  regular: "400Regular/Inter_400Regular.ttf",
  semibold: "600SemiBold/Inter_600SemiBold.ttf",
  italic: "400Regular_Italic/Inter_400Regular_Italic.ttf",
} as const;

/** Fine points kept for the page: kerning, digits of one width, the letter forms of a language. */
const PAGE_FEATURES = ["kern", "tnum", "locl"] as const;

/** Fine points kept for print: those of the page, and accents set in their place. */
const PRINT_FEATURES = [...PAGE_FEATURES, "ccmp", "mark", "mkmk"] as const;

/** No instructions for coarse screens; copyright and licence stay in the file, as the licence asks. */
const COMMON = { noHinting: true, preserveNameIds: [0, 7, 13, 14] } as const;

/**
 * Cuts the typeface down: TrueType for PDF, WOFF2 for the page.
 *
 * @param read - reads a file of the typeface's package
 * @param write - takes each file by its name
 */
export async function makeFonts(
  read: (path: string) => Uint8Array,
  write: (name: string, content: Uint8Array) => void,
): Promise<void> {
  for (const [face, path] of Object.entries(FACES)) {
    const whole = read(path);
    const print = { targetFormat: "truetype", keepFeatures: PRINT_FEATURES } as const;
    write(`inter-${face}.ttf`, await subsetFont(whole, PRINT_LETTERS, { ...print, ...COMMON }));
    const page = { targetFormat: "woff2", keepFeatures: PAGE_FEATURES } as const;
    write(`inter-${face}.woff2`, await subsetFont(whole, PAGE_LETTERS, { ...page, ...COMMON }));
  }
  write("LICENSE.txt", read("LICENSE_FONT"));
}
