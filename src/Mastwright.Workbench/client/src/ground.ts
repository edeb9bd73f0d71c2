// The ground as a map style: land, relief, contours.
import type { RasterSourceSpecification, StyleSpecification } from "maplibre-gl";
import { contourTiles } from "./contours";
import type { BenchSettings, BenchState } from "./state";

export type Theme = "light" | "dark";

const inks = {
  light: { paper: "#fbfaf6", line: "#8a6f4d", text: "#6b5638", halo: "#f4efe3" },
  dark: { paper: "#14191e", line: "#a58f6c", text: "#c4b08d", halo: "#22241f" },
};

export const verdictInks: Record<Theme, Record<string, string>> = {
  light: { ok: "#1b5e9e", tight: "#815900", fails: "#b23a12", unknown: "#59616a" },
  dark: { ok: "#82bcf0", tight: "#e3b552", fails: "#ff8a57", unknown: "#a9b0b6" },
};

/** A dash pattern for each verdict: no verdict is told by its colour alone. */
export const verdictDashes: Record<string, number[]> = { ok: [1], tight: [4, 1.2], fails: [0.8, 1.6], unknown: [2.4, 1.2, 0.5, 1.2] };

export const heightTiles = (settings: BenchSettings) => `${location.origin}/api/v1/tiles/heights/{z}/{x}/{y}.png?ground=${settings.groundHash}`;

const leastZoom = 3;

export function groundStyle(settings: BenchSettings, state: BenchState, theme: Theme): StyleSpecification {
  const ink = inks[theme];
  const style: StyleSpecification = {
    version: 8,
    sources: {},
    layers: [{ id: "paper", type: "background", paint: { "background-color": ink.paper } }],
  };
  const bounds = settings.bounds;
  const picture = (kind: "land" | "relief" | "ground"): RasterSourceSpecification => ({
    type: "raster",
    tiles: [`${location.origin}/api/v1/tiles/${kind}/${theme}/{z}/{x}/{y}.${kind === "relief" ? "png" : "jpg"}?ground=${settings.groundHash}`],
    tileSize: 512,
    minzoom: leastZoom,
    maxzoom: settings.largestZoom - 1,
    bounds: bounds!,
  });
  const isOverBackground = Boolean(settings.backgroundTiles && state.ground === "background");
  const isPlain = state.ground === "plain";
  if (bounds) {
    // The relief comes in the picture of the land: shading it in the browser takes a third of a second for each frame where no graphics processor helps.
    style.sources.land = picture(isPlain || isOverBackground ? "land" : "ground");
    style.sources["heights-tilted"] = { type: "raster-dem", tiles: [heightTiles(settings)], tileSize: 256, encoding: "terrarium", minzoom: leastZoom, maxzoom: settings.largestZoom, bounds };
    style.sources.contours = { type: "vector", tiles: [contourTiles], minzoom: 8, maxzoom: settings.largestZoom, bounds };
    style.layers.push({ id: "land", type: "raster", source: "land", paint: { "raster-fade-duration": 0 } });
  }

  if (isOverBackground) {
    style.sources.background = { type: "raster", tiles: [settings.backgroundTiles!], tileSize: 256 };
    style.layers.push({ id: "background", type: "raster", source: "background", paint: { "raster-fade-duration": 0, "raster-opacity": 0.85 } });
    if (bounds) {
      style.sources.relief = picture("relief");
      style.layers.push({ id: "relief", type: "raster", source: "relief", paint: { "raster-fade-duration": 0 } });
    }
  }

  if (bounds && !isPlain) {
    style.layers.push(
      {
        id: "contour-lines",
        type: "line",
        source: "contours",
        "source-layer": "contours",
        // The line at sea level would run along the shore a second time, half a sample beside it.
        filter: ["!=", ["get", "ele"], 0],
        paint: {
          "line-color": ink.line,
          "line-opacity": ["match", ["get", "level"], 1, 0.6, 0.28],
          "line-width": ["match", ["get", "level"], 1, 1.1, 0.6],
        },
      },
      {
        id: "contour-heights",
        type: "symbol",
        source: "contours",
        "source-layer": "contours",
        filter: ["all", [">", ["get", "level"], 0], ["!=", ["get", "ele"], 0]],
        layout: {
          "symbol-placement": "line",
          "symbol-spacing": 320,
          "text-field": ["concat", ["get", "ele"], " m"],
          "text-font": ["Mastwright Sans"],
          "text-size": 11,
        },
        paint: { "text-color": ink.text, "text-halo-color": ink.halo, "text-halo-width": 1.2 },
      },
    );
  }

  return style;
}
