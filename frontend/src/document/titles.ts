/** Titles of pieces: no two alike on one shelf. */

/** The title, or if it is taken the title with the first number that is free. */
export function freeTitle(title: string, taken: readonly string[]): string {
  const all = new Set(taken);
  let free = title;
  for (let k = 2; all.has(free); k++) free = `${title} ${k}`;
  return free;
}
