/** Work repeats and motifs out into plain moves, as the Python room `pattern.expand` does.
 *
 * The studio needs it for two things: to know which step of the document a move comes from, and to take a
 * repeat apart so that one band of it can be changed alone. Tests hold it equal to the Python way. */
import { parseAddress, printAddress, type Address } from "./address";
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

const known = new WeakMap<Doc, readonly (Move | null)[][]>();

/** Return the moves of each step of the document, in order. A move off the rows is null: it is never made. A document
 * is never changed, so its moves are worked out once. */
export function expand(doc: Doc): readonly (Move | null)[][] {
  let moves = known.get(doc);
  if (!moves) known.set(doc, (moves = workOut(doc)));
  return moves;
}

function workOut(doc: Doc): (Move | null)[][] {
  const motifs = new Map<string, Motif>();
  for (const motif of doc.motifs) if (!motifs.has(motif.name)) motifs.set(motif.name, motif);
  let left = MOST_MOVES;

  function run(steps: readonly Step[], scope: Scope, found: (Move | null)[]): void {
    for (const step of steps) {
      if (step.do === "repeat") {
        const times = typeof step.times === "string" ? (scope.counts[step.times] ?? 0) : step.times;
        for (let k = 0; k < times && left > 0; k++) {
          left--;
          const rows = compose(scope.rows, 1, k * (step.rows ?? 0));
          const colours = { ...scope.colours };
          for (const [slot, turns] of Object.entries(step.colours ?? {})) {
            const given = turns[k % turns.length]!;
            colours[slot] = scope.colours[given] ?? given;
          }
          run(step.steps, { ...scope, rows, pegs: compose(scope.pegs, 1, k * (step.pegs ?? 0)), colours }, found);
        }
      } else if (step.do === "motif") {
        const motif = motifs.get(step.name);
        left--;
        if (!motif || scope.calls.includes(step.name)) continue;
        const colours: Record<string, string> = {};
        for (const [slot, given] of Object.entries(step.colours ?? {})) colours[slot] = scope.colours[given] ?? given;
        let rows = compose(scope.rows, 1, step.rows ?? 0);
        let pegs = compose(scope.pegs, 1, step.pegs ?? 0);
        const counts = { ...motif.counts, ...step.counts };
        const reach = step.mirror?.length ? reachOfMotif(motifs, motif, counts, [...scope.calls, step.name]) : null;
        if (reach && step.mirror?.includes("rows")) rows = compose(rows, -1, reach.low.row + reach.high.row);
        if (reach && step.mirror?.includes("pegs")) pegs = compose(pegs, -1, reach.low.number + reach.high.number);
        run(motif.steps, { rows, pegs, colours, counts, calls: [...scope.calls, step.name] }, found);
      } else {
        left--;
        if (left >= 0) found.push(relocate(step, scope));
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
export function moveBy(step: Move, rows: number, pegs: number): Move | null {
  return relocate(step, {
    rows: { sign: 1, offset: rows },
    pegs: { sign: 1, offset: pegs },
    colours: {},
    counts: {},
    calls: [],
  });
}

function compose(axis: Axis, sign: number, offset: number): Axis {
  return { sign: axis.sign * sign, offset: axis.sign * offset + axis.offset };
}

function relocate(step: Move, scope: Scope): Move | null {
  const changed: Record<string, unknown> = { ...step };
  if ("colour" in step) changed["colour"] = scope.colours[step.colour] ?? step.colour;
  for (const field of PEG_FIELDS) {
    const value = changed[field];
    if (typeof value === "string") changed[field] = mapHolder(value, scope);
    else if (Array.isArray(value)) changed[field] = value.map((each: string) => mapHolder(each, scope));
    const now = changed[field];
    if (now === null || (Array.isArray(now) && now.includes(null))) return null;
  }
  return changed as Move;
}

function mapHolder(holder: string, scope: Scope): string | null {
  const address = parseAddress(holder);
  if (!address) return holder;
  return printAddress({
    row: scope.rows.sign * address.row + scope.rows.offset,
    number: scope.pegs.sign * address.number + scope.pegs.offset,
  });
}

/** The least and the greatest row and peg number that steps touch, worked out. */
interface Reach {
  low: Address;
  high: Address;
}

/** How far a motif reaches, its rounds and the motifs within included; null where it names no peg. A mirrored
 * motif reaches as far as it does unmirrored; a repeat reaches furthest in its first and its last round. */
function reachOfMotif(
  motifs: Map<string, Motif>,
  motif: Motif,
  counts: Record<string, number>,
  calls: string[],
): Reach | null {
  function ofAll(steps: readonly Step[]): Reach | null {
    return steps.map(of).reduce(unionReach, null);
  }
  function of(step: Step): Reach | null {
    if (step.do === "repeat") {
      const times = typeof step.times === "string" ? (counts[step.times] ?? 0) : step.times;
      const once = times > 0 ? ofAll(step.steps) : null;
      return once && unionReach(once, shiftReach(once, (times - 1) * (step.rows ?? 0), (times - 1) * (step.pegs ?? 0)));
    }
    if (step.do === "motif") {
      const inner = calls.includes(step.name) ? undefined : motifs.get(step.name);
      const once = inner && reachOfMotif(motifs, inner, { ...inner.counts, ...step.counts }, [...calls, step.name]);
      return once ? shiftReach(once, step.rows ?? 0, step.pegs ?? 0) : null;
    }
    return addresses([step])
      .map((text) => parseAddress(text)!)
      .map((at): Reach => ({ low: at, high: at }))
      .reduce(unionReach, null as Reach | null);
  }
  return ofAll(motif.steps);
}

function shiftReach(reach: Reach, rows: number, pegs: number): Reach {
  const on = (at: Address): Address => ({ row: at.row + rows, number: at.number + pegs });
  return { low: on(reach.low), high: on(reach.high) };
}

function unionReach(a: Reach | null, b: Reach | null): Reach | null {
  if (!a || !b) return a ?? b;
  const most = (pick: (...numbers: number[]) => number, x: Address, y: Address): Address => ({
    row: pick(x.row, y.row),
    number: pick(x.number, y.number),
  });
  return { low: most(Math.min, a.low, b.low), high: most(Math.max, a.high, b.high) };
}

/** Every peg named by the steps and the first rounds of repeats in them, motifs within left out. */
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
