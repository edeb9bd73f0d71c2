import { copyFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

// The modules that the pages import (map, start, plan editor), one style sheet, and two workers beside it: the map library's own, which it starts from beside the running
// module, and ours for contours. Names stay as they are: the server adds a hash to each when it serves them.
export default defineConfig({
  base: "./",
  build: {
    outDir: here("../wwwroot/client"),
    emptyOutDir: true,
    target: "es2022",
    sourcemap: false,
    chunkSizeWarningLimit: 3000,
    lib: { entry: { map: here("src/map.ts"), boot: here("src/boot.ts"), plan: here("src/plan.ts"), undo: here("src/undo.ts"), timeline: here("src/timeline.ts"), files: here("src/files.ts") }, formats: ["es"], cssFileName: "map" },
    rolldownOptions: {
      output: {
        // A library's names and lines are kept otherwise: that is half as much again for the browser to read.
        minify: true,
        entryFileNames: "[name].js",
        chunkFileNames: "[name].js",
        assetFileNames: "[name][extname]",
      },
    },
  },
  worker: {
    format: "es",
    rolldownOptions: { output: { entryFileNames: "[name].js" } },
  },
  plugins: [
    {
      name: "map-library-worker",
      closeBundle() {
        copyFileSync(here("node_modules/maplibre-gl/dist/maplibre-gl-worker.mjs"), here("../wwwroot/client/maplibre-gl-worker.mjs"));
      },
    },
  ],
});
