/** Contrast as WCAG 2.2 defines it (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio and #dfn-relative-luminance). */

/** Relative luminance of a colour written `#rrggbb`: 0 black, 1 white. */
export function luminance(colour: string): number {
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const [r = 0, g = 0, b = 0] = channels.map((c) =>
    c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** From 1 (the same) to 21 (black on white), whichever is the lighter. */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}
