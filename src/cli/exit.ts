/** Codes a command ends with. */
export const EXIT = {
  /** Done. */
  done: 0,
  /** A fault of the tool. */
  bug: 1,
  /** The command line is wrong. */
  usage: 2,
  /** The input was refused. */
  refused: 3,
  /** Done, with more rows set aside than allowed. */
  aside: 4,
} as const;
