/** Edits: a label and a JSON Patch (RFC 6902: add, replace, remove, test) that can be applied and inverted.
 *
 * The document is never changed; an edit makes a new one that shares what stayed as it was. An edit is plain
 * data, so its JSON is itself. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

export type Op =
  | { op: "add" | "replace" | "test"; path: string; value: unknown }
  | { op: "remove"; path: string };

export interface Edit {
  label: string;
  ops: Op[];
}

export class EditError extends Error {}

/** Apply an edit and return the new document and the edit that takes it back.
 * @throws EditError if an operation has no place to act on; the document is then as it was. */
export function apply<T>(doc: T, edit: Edit): { doc: T; inverse: Edit } {
  let now: unknown = doc;
  const back: Op[] = [];
  for (const op of edit.ops) {
    const parts = splitPointer(op.path);
    const { value, undo } = change(now, parts, op, op.path);
    now = value;
    if (undo) back.unshift(undo);
  }
  return { doc: now as T, inverse: { label: edit.label, ops: back } };
}

/** Return what stands at a path (RFC 6901), or undefined. */
export function valueAt(doc: unknown, path: string): unknown {
  let here = doc;
  for (const part of splitPointer(path)) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, part)) return undefined;
    here = (here as Record<string, unknown>)[part];
  }
  return here;
}

function splitPointer(path: string): string[] {
  if (path === "") return [];
  if (!path.startsWith("/")) throw new EditError(`${path} is no path`);
  return path
    .slice(1)
    .split("/")
    .map((part) => part.replaceAll("~1", "/").replaceAll("~0", "~"));
}

type Change = { value: unknown; undo?: Op };

function change(here: unknown, parts: string[], op: Op, path: string): Change {
  if (parts.length === 0) {
    if (op.op === "test") {
      if (!isEqual(here, op.value)) throw new EditError(`${path} is not what it was`);
      return { value: here };
    }
    if (op.op === "remove") throw new EditError("the whole document cannot be removed");
    return { value: op.value, undo: { op: "replace", path, value: here } };
  }
  const [part, ...rest] = parts as [string, ...string[]];
  if (Array.isArray(here)) return changeList(here, part, rest, op, path);
  if (typeof here !== "object" || here === null) throw new EditError(`there is nothing at ${path}`);
  const there = here as Record<string, unknown>;
  const known = Object.hasOwn(there, part);
  if (rest.length || op.op === "test") {
    if (!known) throw new EditError(`there is nothing at ${path}`);
    const inner = change(there[part], rest, op, path);
    return inner.value === there[part] ? { ...inner, value: here } : { ...inner, value: { ...there, [part]: inner.value } };
  }
  if (op.op === "remove") {
    if (!known) throw new EditError(`there is nothing at ${path}`);
    const { [part]: gone, ...kept } = there;
    return { value: kept, undo: { op: "add", path, value: gone } };
  }
  if (op.op === "replace" && !known) throw new EditError(`there is nothing at ${path}`);
  const value = { ...there };
  // defineProperty, because a field may be called __proto__
  Object.defineProperty(value, part, { value: op.value, enumerable: true, writable: true, configurable: true });
  return { value, undo: known ? { op: "replace", path, value: there[part] } : { op: "remove", path } };
}

function changeList(here: unknown[], part: string, rest: string[], op: Op, path: string): Change {
  const last = part === "-";
  if (!last && !/^(0|[1-9][0-9]*)$/.test(part)) throw new EditError(`there is nothing at ${path}`);
  const index = last ? here.length : Number(part);
  if (rest.length || op.op === "test") {
    if (index >= here.length) throw new EditError(`there is nothing at ${path}`);
    const inner = change(here[index], rest, op, path);
    return inner.value === here[index] ? { ...inner, value: here } : { ...inner, value: here.with(index, inner.value) };
  }
  if (op.op === "add") {
    if (index > here.length) throw new EditError(`there is nothing at ${path}`);
    const where = last ? `${path.slice(0, -1)}${index}` : path;
    return { value: here.toSpliced(index, 0, op.value), undo: { op: "remove", path: where } };
  }
  if (index >= here.length) throw new EditError(`there is nothing at ${path}`);
  if (op.op === "replace")
    return { value: here.with(index, op.value), undo: { op: "replace", path, value: here[index] } };
  return { value: here.toSpliced(index, 1), undo: { op: "add", path, value: here[index] } };
}

function isEqual(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || !a || !b) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every(
      (key) => Object.hasOwn(b, key) && isEqual((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
    )
  );
}
