/** Where a link leads. */
export interface Link {
  /** A place in this file by its name, or an address outside. */
  readonly to: { readonly place: string } | { readonly address: string };
  /** What is read out. */
  readonly says: string;
  /** A mark that refers to a note. */
  readonly reference?: boolean;
}
