import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [svelte()],
  build: {
    outDir: "../src/pegwright/server/page",
    emptyOutDir: true,
    license: { fileName: "LICENCES.md" }, // of every library that is in the page, whoever installs it
    target: "es2022",
    assetsInlineLimit: 0, // the content policy allows no inlined files
    modulePreload: { polyfill: false },
  },
  resolve: process.env["VITEST"] ? { conditions: ["browser"] } : {}, // components are mounted, not written out as text
  test: { include: ["src/**/*.test.ts"], testTimeout: 60_000 }, // a busy machine is no reason to fail
});
