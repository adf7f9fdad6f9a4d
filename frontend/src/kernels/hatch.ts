/** How bands are told apart without colour: a dash pattern by the colour's place in the list. */
export const HATCHES = ["", "2.4 1.5", "0.01 1.7", "1000 0", "3 1.2 0.01 1.2", "0.8 1.9", "5 1.5", "0.01 1.1 0.01 2.6"];

/** Ink that shows on a tint: white where its relative luminance (WCAG 2.2) is below 0.18, else near black. */
export function inkOn(tint: string): string {
  const linear = [1, 3, 5].map((i) => {
    const v = parseInt(tint.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * linear[0]! + 0.7152 * linear[1]! + 0.0722 * linear[2]! < 0.18 ? "#ffffff" : "#1c1f22";
}
