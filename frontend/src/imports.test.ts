/** The rooms of the page import downward only, and no file imports itself by way of others. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, it } from "vitest";

/** Lowest first: a room may import from itself and from those before it. `words` is spoken by the stores too. */
const ROOMS = ["schema", "words", "document", "kernels", "tools", "wire", "state", "views", "app"];
const root = dirname(fileURLToPath(import.meta.url));

const files = (readdirSync(root, { recursive: true }) as string[]).filter((file) => /\.(ts|svelte)$/.test(file) && !file.endsWith(".test.ts"));
const imports = new Map(files.map((file) => [file, importsOf(file)]));

/** The files under `src` that a file imports, by their path from there. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), "utf8");
  const script = file.endsWith(".svelte") ? [...text.matchAll(/<script[^>]*>(.*?)<\/script>/gs)].map((match) => match[1]).join("\n") : text;
  return ts
    .preProcessFile(script, true, true)
    .importedFiles.filter(({ fileName }) => fileName.startsWith("."))
    .flatMap(({ fileName }) => {
      const target = relative(root, resolve(root, dirname(file), fileName.replace(/\?.*$/, "")));
      return [target, `${target}.ts`].filter((each) => isOurs(each));
    });
}

function isOurs(file: string): boolean {
  return files.includes(file);
}

const roomOf = (file: string): number => ROOMS.indexOf(file.includes("/") ? file.slice(0, file.indexOf("/")) : "app");

it("every file lies in a room", () => {
  expect(files.filter((file) => file.includes("/") && roomOf(file) < 0)).toStrictEqual([]);
});

it("the walk finds imports of every kind", () => {
  expect(imports.get("app/Bench.svelte")).toContain("views/LoomTable.svelte");
  expect(imports.get("views/Finished.svelte")).toContain("views/stage.ts"); // a type, and once more when it is wanted
  expect(imports.get("state/bench.svelte.ts")).toContain("document/undo.ts");
});

it("no room imports from one above it", () => {
  const upward = [...imports].flatMap(([file, targets]) => targets.filter((target) => roomOf(target) > roomOf(file)).map((target) => `${file} imports ${target}`));
  expect(upward).toStrictEqual([]);
});

it("no imports go round in a ring", () => {
  const done = new Set<string>();
  function ringFrom(file: string, path: readonly string[]): string | null {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file].join(" > ");
    if (done.has(file)) return null;
    for (const target of imports.get(file) ?? []) {
      const ring = ringFrom(target, [...path, file]);
      if (ring) return ring;
    }
    done.add(file);
    return null;
  }
  expect(files.map((file) => ringFrom(file, [])).filter(Boolean)).toStrictEqual([]);
});
