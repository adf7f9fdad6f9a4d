/** Say how one document differs from an older one, as a maker would: bands by colour, steps, loom, name. */
import { expand } from "./expand";
import type { Doc, Move } from "./pattern";

export interface Difference {
  key: string;
  values: Record<string, string | number>;
}

export function compare(old: Doc, now: Doc): Difference[] {
  const lines: Difference[] = [];
  if (old.title !== now.title) lines.push({ key: "differs-title", values: { old: old.title, now: now.title } });
  if (JSON.stringify(old.loom) !== JSON.stringify(now.loom)) lines.push({ key: "differs-loom", values: {} });
  const [before, after] = [plainMoves(old), plainMoves(now)];
  const [then, here] = [bandCounts(before), bandCounts(after)];
  for (const letter of [...new Set([...then.keys(), ...here.keys()])].sort()) {
    const more = (here.get(letter) ?? 0) - (then.get(letter) ?? 0);
    if (more > 0) lines.push({ key: "differs-more", values: { count: more, letter } });
    if (more < 0) lines.push({ key: "differs-fewer", values: { count: -more, letter } });
  }
  const [a, b] = [before.map((move) => JSON.stringify(move)), after.map((move) => JSON.stringify(move))];
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let end = 0;
  while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end)) end++;
  const [gone, come] = [a.length - start - end, b.length - start - end];
  if (come && !gone) lines.push({ key: "differs-new", values: stepSpan(start, come) });
  else if (gone && !come) lines.push({ key: "differs-gone", values: stepSpan(start, gone) });
  else if (gone && come) lines.push({ key: "differs-changed", values: stepSpan(start, come) });
  if (JSON.stringify(old.colours) !== JSON.stringify(now.colours)) lines.push({ key: "differs-colours", values: {} });
  return lines;
}

function stepSpan(start: number, count: number): Record<string, number> {
  return { count, from: start + 1, to: start + count };
}

function plainMoves(doc: Doc): Move[] {
  return expand(doc)
    .flat()
    .filter((move) => move !== null);
}

function bandCounts(moves: readonly Move[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const move of moves)
    if ("colour" in move) found.set(move.colour, (found.get(move.colour) ?? 0) + (move.do === "extend" ? move.bands : move.do === "bind" ? (move.together ?? 1) : 1));
  return found;
}
