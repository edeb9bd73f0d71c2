// A map that opens is drawn anew for each tile that comes in. Where no graphics processor helps, these frames take most of the time until the
// whole of it is there: so it waits for its tiles, though not for long.
import type { Map as GroundMap } from "maplibre-gl";

const mostMilliseconds = 900;

/** Lets the map wait with its frames until its tiles are there or a while has passed. What is returned ends that. */
export function drawWhole(map: GroundMap): () => void {
  const draw = map.triggerRepaint.bind(map);
  let isAsking = false;
  let timer = 0;
  const now = () => {
    clearTimeout(timer);
    timer = 0;
    draw();
  };
  map.once("render", () => {
    // The first frame is the one that asks for tiles.
    isAsking = true;
  });
  map.triggerRepaint = () => {
    if (!isAsking || map.isMoving() || map.areTilesLoaded()) {
      now();
    } else if (timer === 0) {
      timer = window.setTimeout(now, mostMilliseconds);
    }
  };
  return () => {
    clearTimeout(timer);
    map.triggerRepaint = draw;
  };
}
