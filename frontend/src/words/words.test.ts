import { readdirSync, readFileSync } from "node:fs";
import { FluentResource } from "@fluent/bundle";
import { describe, expect, it } from "vitest";

/** Each language says everything, with the same things filled in. */
const here = new URL(".", import.meta.url);
const source = (name: string) => readFileSync(new URL(name, here), "utf8");

function messages(language: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const { id, value } of new FluentResource(source(`${language}.ftl`)).body)
    found.set(id, [...new Set([...JSON.stringify(value).matchAll(/"type":"var","name":"(\w+)"/g)].map((m) => m[1]!))].sort());
  return found;
}

function everyFile(folder: URL): string {
  return readdirSync(folder, { withFileTypes: true })
    .map((entry) =>
      entry.isDirectory() ? everyFile(new URL(`${entry.name}/`, folder)) : /\.(ts|svelte)$/.test(entry.name) && !entry.name.includes("test") ? readFileSync(new URL(entry.name, folder), "utf8") : "",
    )
    .join("\n");
}

describe("words", () => {
  const english = messages("en");
  it.each(["de", "es"])("%s says what English says", (language) => {
    const other = messages(language);
    expect([...other.keys()].sort()).toStrictEqual([...english.keys()].sort());
    for (const [key, variables] of english) expect([key, other.get(key)]).toStrictEqual([key, variables]);
  });

  it("every word that the page asks for is there, and none is there in vain", () => {
    const code = everyFile(new URL("../", here));
    const plain = [...code.matchAll(/\bt\(["']([\w-]+)["']/g)].map((match) => match[1]!);
    for (const key of plain) expect([key, english.has(key)]).toStrictEqual([key, true]);
    const made = /^(tool|tip|do|phase|severity|channel|differs|feel|loom|joined|panel|say|tint|tour)-/;
    for (const key of english.keys())
      if (!made.test(key)) expect([key, code.includes(`"${key}"`) || code.includes(`'${key}'`) || ["saved", "saving"].includes(key)]).toStrictEqual([key, true]);
  });
});
