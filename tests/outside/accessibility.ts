/**
 * What keeps a page from readers who do not see it, or see it badly, judged inside the browser.
 * After Web Content Accessibility Guidelines 2.2 (W3C Recommendation, 2023): 1.1.1 names of pictures,
 * 1.3.1 headings and heads of tables, 1.4.3 contrast, 2.4.4 text of links, 3.1.1 language. The definitions
 * of relative luminance and contrast ratio are those of its glossary.
 */

/** Least contrast of text against its ground; WCAG 2.2, 1.4.3, for text of any size. */
export const LEAST_CONTRAST = 4.5;

/**
 * Lists what is wrong with the structure of the page this runs in.
 *
 * @returns one line for each fault
 */
export function structureFaults(): string[] {
  const faults: string[] = [];
  const all = (selector: string): Element[] => [...document.querySelectorAll(selector)];
  const text = (element: Element | null): string => element?.textContent.trim() ?? "";
  const shown = (element: Element): string => element.outerHTML.slice(0, 90);
  const named = (element: Element): boolean => {
    const ids = (element.getAttribute("aria-labelledby") ?? "").split(/\s+/).filter(Boolean);
    return (
      (element.getAttribute("aria-label") ?? "").trim() !== "" ||
      (ids.length > 0 && ids.every((id) => text(document.getElementById(id)) !== ""))
    );
  };

  if ((document.documentElement.getAttribute("lang") ?? "") === "") faults.push("no language");
  if (document.title.trim() === "") faults.push("no title");
  if (all("main").length !== 1) faults.push("not one main part");

  if (all("h1").length !== 1) faults.push(`${all("h1").length} headings of level 1`);
  let level = 0;
  for (const heading of all("h1, h2, h3, h4, h5, h6")) {
    const own = Number(heading.tagName.slice(1));
    if (own > level + 1) faults.push(`level ${level} is followed by ${shown(heading)}`);
    if (text(heading) === "") faults.push(`empty: ${shown(heading)}`);
    level = own;
  }

  for (const picture of all("img, svg")) {
    if (picture.closest("[aria-hidden=true]") !== null) continue;
    const title = picture.querySelector(":scope > title");
    const alone = picture.tagName === "IMG" && (picture.getAttribute("alt") ?? "").trim() !== "";
    if (alone) continue;
    if (picture.getAttribute("role") !== "img") faults.push(`no role: ${shown(picture)}`);
    if (!named(picture) && text(title) === "") faults.push(`no name: ${shown(picture)}`);
  }

  for (const table of all("table")) {
    const heads = [...table.querySelectorAll("th")];
    if (heads.length === 0) faults.push(`no heads: ${shown(table)}`);
    for (const head of heads) {
      if (!/^(col|row)(group)?$/.test(head.getAttribute("scope") ?? ""))
        faults.push(`no scope: ${shown(head)}`);
      if (text(head) === "") faults.push(`empty: ${shown(head)}`);
    }
    const caption = table.querySelector("caption") ?? table.closest("figure, details");
    if (text(caption) === "" && !named(table)) faults.push(`no name: ${shown(table)}`);
  }

  for (const link of all("a[href], button, summary")) {
    if (text(link) === "" && !named(link)) faults.push(`no text: ${shown(link)}`);
    const href = link.getAttribute("href") ?? "";
    if (href.startsWith("#") && document.getElementById(href.slice(1)) === null)
      faults.push(`leads nowhere: ${shown(link)}`);
  }

  const ids = all("[id]").map(({ id }) => id);
  for (const id of new Set(ids.filter((one, at) => ids.indexOf(one) !== at)))
    faults.push(`the id ${id} stands twice`);
  for (const element of all("[aria-labelledby], [aria-describedby]")) {
    for (const name of ["aria-labelledby", "aria-describedby"]) {
      for (const id of (element.getAttribute(name) ?? "").split(/\s+/).filter(Boolean))
        if (document.getElementById(id) === null) faults.push(`${name} ${id} leads nowhere`);
    }
  }
  return faults;
}

/**
 * Lists colours of text that stand out too little, with the ground each stands on. In a picture the ground
 * is the last shape drawn under the middle of the text.
 *
 * @param least - least contrast
 * @returns texts looked at, and one line for each pair of colours at fault
 */
export function contrastFaults(least: number): {
  readonly texts: number;
  readonly faults: string[];
} {
  const rgb = (colour: string): number[] | undefined => {
    const parts = /^rgba?\(([^)]+)\)$/
      .exec(colour)?.[1]
      ?.split(/[\s,/]+/)
      .map(Number);
    return parts === undefined || parts[3] === 0 ? undefined : parts;
  };
  const luminance = (parts: readonly number[]): number => {
    const [r = 0, g = 0, b = 0] = parts.slice(0, 3).map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one: readonly number[], other: readonly number[]): number => {
    const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  };
  const groundOf = (element: Element | null): string => {
    for (let at = element; at !== null; at = at.parentElement) {
      const colour = getComputedStyle(at).backgroundColor;
      if (rgb(colour) !== undefined) return colour;
    }
    return "rgb(255, 255, 255)";
  };
  const groundIn = (svg: SVGSVGElement, text: SVGTextContentElement): string => {
    const box = text.getBoundingClientRect();
    let ground = groundOf(svg);
    for (const shape of svg.querySelectorAll<SVGGeometryElement>("rect, path, circle, polygon")) {
      if (shape.closest("defs, clipPath, pattern") !== null) continue;
      // What is drawn after the text lies over it, not under.
      if ((shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING) === 0) continue;
      const { fill } = getComputedStyle(shape);
      const matrix = shape.getScreenCTM();
      if (fill === "none" || matrix === null) continue;
      const middle = new DOMPoint(box.x + box.width / 2, box.y + box.height / 2);
      if (shape.isPointInFill(middle.matrixTransform(matrix.inverse()))) ground = fill;
    }
    return ground;
  };

  const faults = new Set<string>();
  let texts = 0;
  const judge = (colour: string, ground: string, words: string): void => {
    texts += 1;
    const [one, other] = [rgb(colour), rgb(ground)];
    const ratio = one === undefined || other === undefined ? NaN : contrast(one, other);
    if (!(ratio >= least))
      faults.add(`${colour} on ${ground}: ${ratio.toFixed(2)}, such as "${words.slice(0, 30)}"`);
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const words = node.textContent?.trim() ?? "";
    const parent = node.parentElement;
    if (words === "" || parent === null || parent.getClientRects().length === 0) continue;
    if (parent.closest("title, desc, style, script") !== null) continue;
    const svg = parent.closest("svg");
    const text = parent.closest("text");
    if (svg !== null && text !== null)
      judge(getComputedStyle(parent).fill, groundIn(svg, text), words);
    else judge(getComputedStyle(parent).color, groundOf(parent), words);
  }
  return { texts, faults: [...faults] };
}
