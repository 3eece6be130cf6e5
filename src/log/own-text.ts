/**
 * A copy of a text that shares nothing with where it was cut from. Engines cut without copying, so that a
 * name of 20 letters that is kept would keep the whole piece of the log it was read from. Letters that need
 * one byte each are stored so, whatever the text was joined from.
 *
 * @param text - text that will be kept longer than the piece it was cut from
 * @returns an equal text
 */
export function ownText(text: string): string {
  return text.split("").join("");
}
