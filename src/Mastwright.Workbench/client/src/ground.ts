// The ground as a map style: land, relief, contours.
import type { StyleSpecification } from "maplibre-gl";
import { contourTiles } from "./contours";
import type { BenchSettings, BenchState } from "./state";

export type Theme = "light" | "dark";

const inks = {
  light: { paper: "#fbfaf6", line: "#8a6f4d", text: "#6b5638", halo: "#f4efe3", shadow: "#4a3f55", accent: "#7d6a86", shine: "#fffdf6" },
  dark: { paper: "#14191e", line: "#a58f6c", text: "#c4b08d", halo: "#22241f", shadow: "#04060a", accent: "#0c1016", shine: "#8d8a9c" },
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
  if (bounds) {
    const heights = { type: "raster-dem", tiles: [heightTiles(settings)], tileSize: 256, encoding: "terrarium", minzoom: leastZoom, maxzoom: settings.largestZoom, bounds } as const;
    // The tilted ground asks for tiles of its own sizes: a source of its own keeps the two from waiting for one another.
    Object.assign(style.sources, {
      heights,
      "heights-tilted": heights,
      land: {
        type: "raster",
        tiles: [`${location.origin}/api/v1/tiles/land/${theme}/{z}/{x}/{y}.png?ground=${settings.groundHash}`],
        tileSize: 256,
        minzoom: leastZoom,
        maxzoom: settings.largestZoom,
        bounds,
      },
      contours: { type: "vector", tiles: [contourTiles], minzoom: 8, maxzoom: settings.largestZoom, bounds },
    });
    style.layers.push({ id: "land", type: "raster", source: "land", paint: { "raster-fade-duration": 0 } });
  }

  if (settings.backgroundTiles && state.ground === "background") {
    style.sources.background = { type: "raster", tiles: [settings.backgroundTiles], tileSize: 256 };
    style.layers.push({ id: "background", type: "raster", source: "background", paint: { "raster-fade-duration": 0, "raster-opacity": 0.85 } });
  }

  if (bounds && state.ground !== "plain") {
    style.layers.push(
      {
        id: "relief",
        type: "hillshade",
        source: "heights",
        paint: {
          "hillshade-method": "igor",
          "hillshade-exaggeration": 0.55,
          "hillshade-illumination-direction": 315,
          "hillshade-shadow-color": ink.shadow,
          "hillshade-accent-color": ink.accent,
          "hillshade-highlight-color": ink.shine,
        },
      },
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
