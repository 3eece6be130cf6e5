/**
 * Units of amounts, rates and flows as products of symbols, so that a route can be checked when it is put
 * together: the unit of an amount times that of its rate must be that of the flow.
 *
 * Symbols are not converted into one another: kWh, MJ and kJ are three symbols, and so are h and s. Only
 * spellings of the same symbol are brought together: °C and K (a difference), m² and m2, lots and lot.
 */

/** Symbols with their exponents, none of them 0. */
export type Dimension = ReadonlyMap<string, number>;

const SAME: ReadonlyMap<string, string> = new Map([
  ["°C", "K"],
  ["degC", "K"],
  ["lots", "lot"],
  ["l", "L"],
]);

const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

// A symbol (a gas by its formula, or letters), an exponent in one of three spellings, or a mark.
const TOKEN =
  /\s*(?:(?<symbol>CO2e?|N2O|CH4|°C|[A-Za-zµ€$%]+)(?:\^?(?<exponent>-?\d+)|(?<raised>⁻?[⁰¹²³⁴-⁹]+))?|(?<one>1)(?!\d)|(?<mark>[·*/()]))\s*/uy;

/**
 * Reads a unit.
 *
 * A slash divides by the one symbol or bracket behind it: `kJ/(kg K)`, `L/kg/h`. `kJ/kg K` says neither
 * one thing nor the other and is not taken.
 *
 * @param unit - such as `kWh/h`, `kg·°C`, `MJ/(kg °C)`, `m²`, `1`
 * @returns its symbols with their exponents, or undefined when it cannot be read
 */
export function readUnit(unit: string): Dimension | undefined {
  const reader: Reader = { text: unit, at: 0 };
  const dimension = product(reader);
  return reader.at === unit.length ? dimension : undefined;
}

/**
 * Product of two units.
 *
 * @param a - one unit
 * @param b - the other
 * @returns the product in its canonical spelling, `1` when all cancels
 * @throws TypeError when one of them cannot be read
 */
export function unitProduct(a: string, b: string): string {
  return kept(PRODUCTS, `${a} × ${b}`, () => {
    const exponents = new Map(mustRead(a));
    for (const [symbol, exponent] of mustRead(b)) raise(exponents, symbol, exponent);
    return spelled(exponents);
  });
}

/**
 * Whether two units are the same but for their spelling.
 *
 * @param a - one unit
 * @param b - the other
 * @returns true when every symbol has the same exponent in both
 * @throws TypeError when one of them cannot be read
 */
export function sameUnit(a: string, b: string): boolean {
  return canonical(a) === canonical(b);
}

function canonical(unit: string): string {
  return kept(SPELLED, unit, () => spelled(mustRead(unit)));
}

interface Reader {
  readonly text: string;
  at: number;
}

interface Token {
  readonly symbol?: string;
  readonly exponent?: string;
  readonly raised?: string;
  readonly one?: string;
  readonly mark?: string;
}

function peek(reader: Reader): (Token & { readonly end: number }) | undefined {
  TOKEN.lastIndex = reader.at;
  const match = TOKEN.exec(reader.text);
  return match?.groups === undefined ? undefined : { ...match.groups, end: TOKEN.lastIndex };
}

// product = factor { ["·"] factor | "/" factor }, and behind a slash's factor nothing but a further slash.
function product(reader: Reader): Dimension | undefined {
  const first = oneFactor(reader);
  if (first === undefined) return undefined;
  const result = new Map(first);
  let sign = 1;
  for (;;) {
    const token = peek(reader);
    if (token === undefined || token.mark === ")") return result;
    if (token.mark === "/") sign = -1;
    else if (sign < 0) return undefined;
    if (token.mark !== undefined && token.mark !== "(") reader.at = token.end;
    const factor = oneFactor(reader);
    if (factor === undefined) return undefined;
    for (const [symbol, exponent] of factor) raise(result, symbol, sign * exponent);
  }
}

function oneFactor(reader: Reader): Dimension | undefined {
  const token = peek(reader);
  if (token === undefined) return undefined;
  reader.at = token.end;
  if (token.one !== undefined) return new Map();
  if (token.mark === "(") {
    const inside = product(reader);
    const close = peek(reader);
    if (close?.mark !== ")") return undefined;
    reader.at = close.end;
    return inside;
  }
  if (token.symbol === undefined) return undefined;
  const exponent = Number(token.exponent ?? lowered(token.raised) ?? 1);
  return exponent === 0 ? undefined : new Map([[SAME.get(token.symbol) ?? token.symbol, exponent]]);
}

function lowered(raised: string | undefined): string | undefined {
  return raised?.replace("⁻", "-").replace(/[⁰¹²³⁴-⁹]/gu, (digit) => String(RAISED.indexOf(digit)));
}

function raise(exponents: Map<string, number>, symbol: string, by: number): void {
  const exponent = (exponents.get(symbol) ?? 0) + by;
  if (exponent === 0) exponents.delete(symbol);
  else exponents.set(symbol, exponent);
}

// Routes ask for the same few units thousands of times.
const READ = new Map<string, Dimension>();
const PRODUCTS = new Map<string, string>();
const SPELLED = new Map<string, string>();

function kept<T>(known: Map<string, T>, key: string, make: () => T): T {
  let found = known.get(key);
  if (found === undefined) known.set(key, (found = make()));
  return found;
}

function mustRead(unit: string): Dimension {
  return kept(READ, unit, () => {
    const dimension = readUnit(unit);
    if (dimension !== undefined) return dimension;
    throw new TypeError(
      `"${unit}" cannot be read as a unit; write it as a product of symbols, such as kJ/(kg K)`,
    );
  });
}

function spelled(dimension: Dimension): string {
  const symbols = [...dimension].sort(([a], [b]) => (a < b ? -1 : 1));
  const above = symbols.filter(([, exponent]) => exponent > 0).map(powered);
  const below = symbols.filter(([, exponent]) => exponent < 0).map(powered);
  const top = above.length > 0 ? above.join("·") : "1";
  if (below.length === 0) return top;
  return `${top}/${below.length === 1 ? below.join("") : `(${below.join("·")})`}`;
}

function powered([symbol, exponent]: readonly [string, number]): string {
  const size = Math.abs(exponent);
  return size === 1
    ? symbol
    : symbol + String(size).replace(/\d/g, (d) => RAISED.charAt(Number(d)));
}
