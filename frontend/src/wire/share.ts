/** Take from an answer only what is new: parts that say the same as before stay the very same objects.
 *
 * What is drawn from a part is then not drawn again. Both are plain JSON; `fresh` is given over and may be changed. */
export function shareUnchanged<T>(old: unknown, fresh: T): T {
  if (Object.is(old, fresh)) return fresh;
  if (typeof old !== "object" || typeof fresh !== "object" || !old || !fresh || Array.isArray(old) !== Array.isArray(fresh)) return fresh;
  const before = old as Record<string, unknown>;
  const after = fresh as Record<string, unknown>;
  const keys = Object.keys(after);
  let same = keys.length === Object.keys(before).length;
  for (const key of keys) {
    const kept = shareUnchanged(before[key], after[key]);
    after[key] = kept;
    same &&= Object.hasOwn(before, key) && Object.is(before[key], kept);
  }
  return same ? (old as T) : fresh;
}
