/**
 * Captions of tables: what stands in them first, then how to read them.
 */

/**
 * Parts a caption where its name ends, so that conditions need not be set as loud as the name.
 *
 * @param caption - the caption
 * @returns its first clause, up to a colon or full stop, and the rest; the rest is empty where there is none
 */
export function captionParts(caption: string): readonly [string, string] {
  const [, name = caption, rest = ""] = /^(.+?[.:]) +(\S.*)$/s.exec(caption) ?? [];
  return [name, rest];
}
