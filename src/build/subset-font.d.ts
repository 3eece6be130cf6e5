declare module "subset-font" {
  /** What may be asked of a subset. */
  interface SubsetOptions {
    /** Format of the result. */
    readonly targetFormat: "truetype" | "woff2";
    /** OpenType features kept; all when absent. */
    readonly keepFeatures?: readonly string[];
    /** Leaves out the instructions for coarse screens. */
    readonly noHinting?: boolean;
    /** Entries of the name table kept beside those that every font needs. */
    readonly preserveNameIds?: readonly number[];
  }

  /**
   * Cuts a typeface down to the letters of a text.
   *
   * @param font - the whole typeface
   * @param text - letters to keep
   * @param options - format and fine points of the result
   * @returns the smaller typeface
   */
  export default function subsetFont(
    font: Uint8Array,
    text: string,
    options: SubsetOptions,
  ): Promise<Uint8Array>;
}
