/** Kinds of machine that serve steps of other names than their own. */
export const SERVES: Readonly<Record<string, readonly string[]>> = {
  stenter: ["stenter-dry", "stenter-cure"],
};

/** Kinds of step that need no machine. */
export const WITHOUT_MACHINE: ReadonlySet<string> = new Set(["stored"]);
