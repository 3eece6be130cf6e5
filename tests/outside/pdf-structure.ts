/** A value of a file as qpdf writes it: references as `7 0 R`, names as `/Name`, texts as `u:text`. */
export type Value = null | boolean | number | string | readonly Value[] | Dictionary;

/** A dictionary of a file. */
export interface Dictionary {
  readonly [key: string]: Value;
}

/** What qpdf prints for `--json=2`, as far as it is read here. */
interface QpdfOutput {
  readonly qpdf: readonly [
    unknown,
    Readonly<
      Record<string, { readonly value?: Value; readonly stream?: { readonly dict: Dictionary } }>
    >,
  ];
}

/** Objects of a file, and its catalogue. */
export interface Objects {
  readonly catalogue: Dictionary;
  /** Follows a reference, if it is one. */
  readonly get: (value: Value | undefined) => Value | undefined;
}

/** Reads what qpdf prints. */
export function readObjects(printed: string): Objects {
  const [, table] = (JSON.parse(printed) as QpdfOutput).qpdf;
  const get = (value: Value | undefined): Value | undefined => {
    if (typeof value !== "string" || !/^\d+ \d+ R$/.test(value)) return value;
    const entry = table[`obj:${value}`];
    return entry?.value ?? entry?.stream?.dict;
  };
  const trailer = dictionary(table["trailer"]?.value);
  return { get, catalogue: dictionary(get(trailer["/Root"])) };
}

/** Takes a value for a dictionary; an empty one where it is something else. */
export function dictionary(value: Value | undefined): Dictionary {
  return isDictionary(value) ? value : {};
}

function isDictionary(value: Value | undefined): value is Dictionary {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function shown(value: Value | undefined): string {
  return typeof value === "string" ? value : JSON.stringify(value ?? null);
}

/** Takes a value for a list; a single value is a list of one. */
export function list(value: Value | undefined): readonly Value[] {
  if (value === undefined || value === null) return [];
  return Array.isArray(value) ? (value as readonly Value[]) : [value];
}

/**
 * Looks for faults in the structure of a tagged file. The rules are our reading of ISO 14289-1 (PDF/UA-1)
 * and of ISO 32000-1, 14.7 and 14.8; no certificate follows from them.
 *
 * @param objects - the file
 * @returns one line a fault
 */
export function structureFaults({ catalogue, get }: Objects): readonly string[] {
  const faults: string[] = [];
  const root = dictionary(get(catalogue["/StructTreeRoot"]));
  const numbers = list(dictionary(get(root["/ParentTree"]))["/Nums"]);
  const parents = new Map<Value, Value>();
  for (let at = 0; at < numbers.length; at += 2)
    parents.set(numbers[at] ?? null, numbers[at + 1] ?? null);
  const pages = list(dictionary(get(catalogue["/Pages"]))["/Kids"]);
  const pageOfAnnotation = new Map<Value, Value>();
  const annotations: Value[] = [];
  for (const page of pages) {
    const entries = dictionary(get(page));
    if (entries["/Tabs"] !== "/S") faults.push(`page ${shown(page)} has no tab order by structure`);
    for (const annotation of list(get(entries["/Annots"]))) {
      pageOfAnnotation.set(annotation, page);
      annotations.push(annotation);
    }
  }
  const ids = new Set<Value>();
  const seen = new Set<string>();
  const placed = new Set<Value>();
  let level = 0;

  const content = (element: Value, page: Value | undefined, mcid: number): void => {
    const key = `${shown(page)} ${mcid}`;
    if (seen.has(key)) faults.push(`content ${key} belongs to two elements`);
    seen.add(key);
    const tree = list(get(parents.get(dictionary(get(page))["/StructParents"] ?? null)));
    if (tree[mcid] !== element)
      faults.push(`content ${key} does not lead back to ${shown(element)}`);
  };
  const visit = (element: Value, parent: Value, roles: readonly string[]): void => {
    const entries = dictionary(get(element));
    const role = shown(entries["/S"]).slice(1);
    if (entries["/P"] !== parent) faults.push(`${role} ${shown(element)} does not know its parent`);
    const allowed = PARENTS[role];
    if (allowed && !allowed.includes(roles.at(-1) ?? ""))
      faults.push(`${role} stands in ${roles.at(-1) ?? "nothing"}`);
    const attributes = dictionary(get(entries["/A"]));
    if (role === "Figure" && (!entries["/Alt"] || !attributes["/BBox"]))
      faults.push("a figure lacks its words or its box");
    if (role === "TH" && !attributes["/Scope"]) faults.push("a TH lacks its scope");
    if (role === "L" && !attributes["/ListNumbering"])
      faults.push("a list does not say how it is numbered");
    if (role === "Note") {
      const id = entries["/ID"] ?? null;
      if (id === null || ids.has(id)) faults.push("a note lacks a name of its own");
      ids.add(id);
    }
    if (/^H\d$/.test(role)) {
      const own = Number(role.slice(1));
      if (own > level + 1) faults.push(`H${own} follows H${level}`);
      level = own;
    }
    for (const child of list(entries["/K"])) {
      const inner = dictionary(child);
      if (typeof child === "number") content(element, entries["/Pg"], child);
      else if (inner["/Type"] === "/MCR") content(element, inner["/Pg"], Number(inner["/MCID"]));
      else if (inner["/Type"] === "/OBJR") {
        const target = inner["/Obj"] ?? null;
        placed.add(target);
        if (role !== "Link") faults.push(`a link stands in ${role}`);
        if (pageOfAnnotation.get(target) !== (inner["/Pg"] ?? entries["/Pg"]))
          faults.push(`link ${shown(target)} is not on the page it names`);
        const back = parents.get(dictionary(get(target))["/StructParent"] ?? null);
        if (back !== element) faults.push(`link ${shown(target)} does not lead back`);
      } else visit(child, element, [...roles, role]);
    }
  };
  for (const child of list(root["/K"]))
    visit(child, catalogue["/StructTreeRoot"] ?? null, ["Root"]);
  for (const annotation of annotations) {
    const entries = dictionary(get(annotation));
    if (!placed.has(annotation))
      faults.push(`link ${shown(annotation)} stands outside the structure`);
    if (!entries["/Contents"]) faults.push(`link ${shown(annotation)} says nothing`);
    if (entries["/F"] !== 4) faults.push(`link ${shown(annotation)} is not printed`);
  }
  for (const page of pages) {
    const tree = list(get(parents.get(dictionary(get(page))["/StructParents"] ?? null)));
    tree.forEach((_, mcid) => {
      if (!seen.has(`${shown(page)} ${mcid}`))
        faults.push(`content ${mcid} of page ${shown(page)} is in no element`);
    });
  }
  const named = list(dictionary(get(root["/IDTree"]))["/Names"]).filter(
    (_, index) => index % 2 === 0,
  );
  if (shown(named) !== shown([...ids])) faults.push("the list of names is not that of the notes");
  return faults;
}

/** Elements that may only stand in certain others. Source: ISO 32000-1 14.8.4, tables 333 to 337. */
const PARENTS: Readonly<Record<string, readonly string[]>> = {
  LI: ["L"],
  Lbl: ["LI", "Note"],
  LBody: ["LI"],
  TR: ["THead", "TBody", "Table"],
  THead: ["Table"],
  TBody: ["Table"],
  TH: ["TR"],
  TD: ["TR"],
  Caption: ["Table", "Figure"],
};

/**
 * Counts the bookmarks shown when a file is opened, and checks that each count is there.
 *
 * @param objects - the file
 * @returns counts as written, from the root down
 */
export function bookmarkCounts({ catalogue, get }: Objects): readonly (readonly [string, Value])[] {
  const found: (readonly [string, Value])[] = [];
  const visit = (item: Value | undefined): void => {
    const entries = dictionary(get(item));
    if (entries["/First"] !== undefined)
      found.push([shown(entries["/Title"] ?? ""), entries["/Count"] ?? null]);
    for (
      let child = entries["/First"];
      child !== undefined;
      child = dictionary(get(child))["/Next"]
    )
      visit(child);
  };
  visit(catalogue["/Outlines"]);
  return found;
}
