/**
 * Which addresses outside the report a link may lead to.
 */

/**
 * Judges the address of a link. It leads out over `https` alone, as templates demand: a report is handed
 * on, and what it leads to must not be changed on the way. Mail is left out, since an address of a
 * person does not belong into a file that is passed around; a writer sets such a link as plain text.
 *
 * @param href - address as the document holds it; places in the report, `#ID`, are no concern of this
 * @returns the address in its standard spelling; undefined where it is none that may be followed
 */
export function outsideAddress(href: string): string | undefined {
  if (!URL.canParse(href)) return undefined;
  const url = new URL(href);
  return url.protocol === "https:" ? url.href : undefined;
}
