/** Red, green and blue as a screen emits them, from 0 to 1: sRGB, IEC 61966-2-1, undone. */
export function linear(colour: string): readonly [number, number, number] {
  const part = (start: number): number => {
    const value = parseInt(colour.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

/** WCAG 2.2, definition of relative luminance. */
export function luminance(colour: string): number {
  const [red, green, blue] = linear(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, definition of contrast ratio. */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}
