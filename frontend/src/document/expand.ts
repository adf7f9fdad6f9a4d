/** Work repeats and motifs out into plain moves, as the Python room `pattern.expand` does.
 *
 * The studio needs it for two things: to know which step of the document a move comes from, and to take a
 * repeat apart so that one band of it can be changed alone. Tests hold it equal to the Python way. */
import { parseAddress, printAddress } from "./address";
import type { Doc, Motif, Move, Step } from "./pattern";

/** How row or peg numbers here map to the loom's: number → sign · number + offset. */
interface Axis {
  sign: number;
  offset: number;
}

interface Scope {
  rows: Axis;
  pegs: Axis;
  colours: Record<string, string>;
  counts: Record<string, number>;
  calls: string[];
}

const PLAIN: Axis = { sign: 1, offset: 0 };
export const MOST_MOVES = 60_000;
const PEG_FIELDS = ["from", "to", "on", "at", "over"] as const;

/** Return the moves of each step of the document, in order. A move off the rows is null: it is never made. */
export function expand(doc: Doc): (Move | null)[][] {
  const motifs = new Map<string, Motif>();
  for (const motif of doc.motifs) if (!motifs.has(motif.name)) motifs.set(motif.name, motif);
  let left = MOST_MOVES;

  function run(steps: readonly Step[], scope: Scope, found: (Move | null)[]): void {
    for (const step of steps) {
      if (step.do === "repeat") {
        const times = typeof step.times === "string" ? (scope.counts[step.times] ?? 0) : step.times;
        for (let k = 0; k < times && left > 0; k++) {
          left--;
          const rows = after(scope.rows, 1, k * (step.rows ?? 0));
          run(step.steps, { ...scope, rows, pegs: after(scope.pegs, 1, k * (step.pegs ?? 0)) }, found);
        }
      } else if (step.do === "motif") {
        const motif = motifs.get(step.name);
        left--;
        if (!motif || scope.calls.includes(step.name)) continue;
        const colours: Record<string, string> = {};
        for (const [slot, given] of Object.entries(step.colours ?? {})) colours[slot] = scope.colours[given] ?? given;
        let rows = after(scope.rows, 1, step.rows ?? 0);
        let pegs = after(scope.pegs, 1, step.pegs ?? 0);
        const places = addresses(motif.steps).map((text) => parseAddress(text)!);
        const span = (numbers: number[]) => Math.min(...numbers) + Math.max(...numbers);
        if (places.length && step.mirror?.includes("rows")) rows = after(rows, -1, span(places.map((p) => p.row)));
        if (places.length && step.mirror?.includes("pegs")) pegs = after(pegs, -1, span(places.map((p) => p.number)));
        const counts = { ...motif.counts, ...step.counts };
        run(motif.steps, { rows, pegs, colours, counts, calls: [...scope.calls, step.name] }, found);
      } else {
        left--;
        if (left >= 0) found.push(relocated(step, scope));
      }
    }
  }

  return doc.steps.map((step) => {
    const found: (Move | null)[] = [];
    run([step], { rows: PLAIN, pegs: PLAIN, colours: {}, counts: {}, calls: [] }, found);
    return found;
  });
}

/** Move a step's addresses on by rows and pegs; null where that leads off the rows. */
export function moved(step: Move, rows: number, pegs: number): Move | null {
  return relocated(step, {
    rows: { sign: 1, offset: rows },
    pegs: { sign: 1, offset: pegs },
    colours: {},
    counts: {},
    calls: [],
  });
}

function after(axis: Axis, sign: number, offset: number): Axis {
  return { sign: axis.sign * sign, offset: axis.sign * offset + axis.offset };
}

function relocated(step: Move, scope: Scope): Move | null {
  const changed: Record<string, unknown> = { ...step };
  if ("colour" in step) changed["colour"] = scope.colours[step.colour] ?? step.colour;
  for (const field of PEG_FIELDS) {
    const value = changed[field];
    if (typeof value === "string") changed[field] = put(value, scope);
    else if (Array.isArray(value)) changed[field] = value.map((each: string) => put(each, scope));
    const now = changed[field];
    if (now === null || (Array.isArray(now) && now.includes(null))) return null;
  }
  return changed as Move;
}

function put(holder: string, scope: Scope): string | null {
  const address = parseAddress(holder);
  if (!address) return holder;
  return printAddress({
    row: scope.rows.sign * address.row + scope.rows.offset,
    number: scope.pegs.sign * address.number + scope.pegs.offset,
  });
}

/** Every peg named by the steps and the repeats in them, motifs within left out. */
export function addresses(steps: readonly Step[]): string[] {
  const found: string[] = [];
  for (const step of steps) {
    if (step.do === "repeat") found.push(...addresses(step.steps));
    else
      for (const field of PEG_FIELDS) {
        const value = (step as unknown as Record<string, unknown>)[field];
        for (const each of Array.isArray(value) ? value : [value])
          if (typeof each === "string" && parseAddress(each)) found.push(each);
      }
  }
  return found;
}
