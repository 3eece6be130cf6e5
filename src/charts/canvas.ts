/**
 * The tree that pictures are first drawn into, the same on every machine. The one place that names
 * the library which provides it.
 */

import { parseHTML } from "linkedom";

/** A document to draw in. */
export const canvas: Document = parseHTML("<html><body></body></html>").document;
