// Contours of the height tiles, as vector tiles, away from the page's own thread.
import contour from "maplibre-contour";

export interface ContourSetup {
  tiles: string;
  largestZoom: number;
}

export interface ContourQuestion {
  id: number;
  zoom: number;
  x: number;
  y: number;
  levels: number[];
}

export interface ContourReply {
  id: number;
  tile?: ArrayBuffer;
  problem?: string;
}

let manager: InstanceType<typeof contour.LocalDemManager> | undefined;
const running = new Map<number, AbortController>();

self.onmessage = async (event: MessageEvent<ContourSetup | ContourQuestion | { cancel: number }>) => {
  const asked = event.data;
  if ("tiles" in asked) {
    manager = new contour.LocalDemManager({ demUrlPattern: asked.tiles, cacheSize: 60, encoding: "terrarium", maxzoom: asked.largestZoom, timeoutMs: 20_000 });
    return;
  }

  if ("cancel" in asked) {
    running.get(asked.cancel)?.abort();
    return;
  }

  const stop = new AbortController();
  running.set(asked.id, stop);
  try {
    // A quarter of the tile one zoom up, not the tile itself and its eight neighbours: far fewer tiles for lines as good to the eye.
    const made = await manager!.fetchContourTile(asked.zoom, asked.x, asked.y, { levels: asked.levels, overzoom: 1, contourLayer: "contours" }, stop);
    const tile = made.arrayBuffer.slice(0);
    self.postMessage({ id: asked.id, tile } satisfies ContourReply, { transfer: [tile] });
  } catch (fault) {
    self.postMessage({ id: asked.id, problem: String(fault) } satisfies ContourReply);
  } finally {
    running.delete(asked.id);
  }
};
