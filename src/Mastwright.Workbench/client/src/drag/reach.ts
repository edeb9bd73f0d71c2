// The reach over the ground: colours and hatches values that the server worked out, and reads the one under the cursor.
import type { CanvasSource, Map as GroundMap } from "maplibre-gl";
import type { Corners, Reach } from "./answer";
import { onProcessor } from "./overlay";

const mostPixels = 1100;
const mostScale = 3;
/** While something moves the picture is coarser: it is drawn for every step. */
const liveScale = 2;
/** Lines of the hatch across a picture, whatever its number of pixels, and how much of each period is inked. */
const hatchLines = 75;
const hatchShare = 0.16;

type Field = Reach & { values: Float32Array };

export class ReachLayer {
  private readonly canvas = document.createElement("canvas");
  private readonly live = document.createElement("canvas");
  private field: Field | null = null;
  private opacity = 0.7;

  constructor(
    private readonly map: GroundMap,
    private readonly under: string,
  ) {}

  /** Puts the layer over a new style. */
  addTo(): void {
    if (this.field) {
      this.put(this.field);
    }
  }

  get shown(): Reach | null {
    return this.field;
  }

  setOpacity(opacity: number): void {
    this.opacity = opacity;
    if (this.map.getLayer("reach")) {
      this.map.setPaintProperty("reach", "raster-opacity", opacity);
    }
  }

  clear(): void {
    this.field = null;
    if (this.map.getLayer("reach")) {
      this.map.removeLayer("reach");
      this.map.removeSource("reach");
    }
  }

  /** The picture of a reach that moves, and where its corners lie. The map itself is not told. */
  picture(reach: Reach, values: Float32Array): { picture: HTMLCanvasElement; corners: Corners; opacity: number } {
    this.field = { ...reach, values };
    paint(this.live, this.field, liveScale);
    return { picture: this.live, corners: reach.corners, opacity: this.opacity };
  }

  /** Whether the map's own picture of the reach is seen, while another stands before it. */
  setVisible(isVisible: boolean): void {
    if (this.map.getLayer("reach")) {
      this.map.setLayoutProperty("reach", "visibility", isVisible ? "visible" : "none");
    }
  }

  show(reach: Reach, values: Float32Array): void {
    this.field = { ...reach, values };
    const size = `${this.canvas.width} ${this.canvas.height}`;
    paint(this.canvas, this.field, mostScale);
    const source = this.map.getSource<CanvasSource>("reach");
    if (source && size === `${this.canvas.width} ${this.canvas.height}`) {
      this.setVisible(true);
      source.setCoordinates(reach.corners);
      // Playing for one frame takes the canvas's new pixels over.
      source.play();
      source.pause();
      this.map.triggerRepaint();
    } else {
      this.put(this.field);
    }
  }

  /** The value at a place, in the layer's unit; null outside the map or where there is none. */
  valueAt(longitude: number, latitude: number): number | null {
    const field = this.field;
    const at = field && within(field.corners, longitude, latitude);
    if (!field || !at) {
      return null;
    }

    const column = Math.min(field.columns - 1, Math.floor(at.across * field.columns));
    const row = Math.min(field.rows - 1, Math.floor(at.down * field.rows));
    const value = field.values[row * field.columns + column]!;
    return Number.isNaN(value) ? null : value * field.scale;
  }

  private put(field: Field): void {
    if (!this.map.isStyleLoaded() && !this.map.getLayer("rings")) {
      return;
    }

    if (this.map.getLayer("reach")) {
      this.map.removeLayer("reach");
      this.map.removeSource("reach");
    }

    this.map.addSource("reach", { type: "canvas", canvas: this.canvas, coordinates: field.corners, animate: false });
    this.map.addLayer(
      { id: "reach", type: "raster", source: "reach", paint: { "raster-opacity": this.opacity, "raster-fade-duration": 0 } },
      this.map.getLayer("contour-lines") ? "contour-lines" : this.map.getLayer(this.under) ? this.under : undefined,
    );
  }
}

/** Where a place lies in a square with slightly bent sides, as shares of it. */
function within(corners: Corners, longitude: number, latitude: number): { across: number; down: number } | null {
  const [nw, ne, se, sw] = corners.map(([x, y]) => [x, mercator(y)] as const) as unknown as [Spot, Spot, Spot, Spot];
  const [x, y] = [longitude, mercator(latitude)];
  let [across, down] = [0.5, 0.5];
  for (let i = 0; i < 4; i++) {
    const at = (k: 0 | 1) => (1 - down) * ((1 - across) * nw[k] + across * ne[k]) + down * ((1 - across) * sw[k] + across * se[k]);
    const [offX, offY] = [x - at(0), y - at(1)];
    const [ax, ay] = [(1 - down) * (ne[0] - nw[0]) + down * (se[0] - sw[0]), (1 - down) * (ne[1] - nw[1]) + down * (se[1] - sw[1])];
    const [dx, dy] = [(1 - across) * (sw[0] - nw[0]) + across * (se[0] - ne[0]), (1 - across) * (sw[1] - nw[1]) + across * (se[1] - ne[1])];
    const size = ax * dy - ay * dx;
    across += (offX * dy - offY * dx) / size;
    down += (ax * offY - ay * offX) / size;
  }

  return across >= 0 && across < 1 && down >= 0 && down < 1 ? { across, down } : null;
}

type Spot = readonly [number, number];

const mercator = (latitude: number) => (Math.log(Math.tan(Math.PI / 4 + (latitude * Math.PI) / 360)) * 180) / Math.PI;

/** Colours by class, a hatch below the first; nothing where there is no value. */
function paint(canvas: HTMLCanvasElement, field: Field, most: number): void {
  const { columns, rows, values } = field;
  const scale = Math.max(1, Math.min(most, Math.floor(mostPixels / Math.max(columns, rows))));
  const [width, height] = [columns * scale, rows * scale];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }

  const context = onProcessor(canvas);
  const image = context.createImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);
  const inks = field.classes.map((one) => packed(one.ink, 255));
  const edges = field.classes.map((one) => one.from);
  const hatch = packed(field.hatch, 190);
  const period = Math.max(4, Math.round(width / hatchLines));
  const west = new Int32Array(width);
  const share = new Float32Array(width);
  for (let x = 0; x < width; x++) {
    const at = Math.min(columns - 1, Math.max(0, (x + 0.5) / scale - 0.5));
    west[x] = Math.min(columns - 2, Math.floor(at));
    share[x] = at - west[x]!;
  }

  for (let y = 0; y < height; y++) {
    const at = Math.min(rows - 1, Math.max(0, (y + 0.5) / scale - 0.5));
    const north = Math.min(rows - 2, Math.floor(at));
    const down = at - north;
    const nearest = Math.min(rows - 1, Math.floor(y / scale)) * columns;
    for (let x = 0; x < width; x++) {
      const i = north * columns + west[x]!;
      const right = share[x]!;
      let value = (1 - down) * (values[i]! * (1 - right) + values[i + 1]! * right) + down * (values[i + columns]! * (1 - right) + values[i + columns + 1]! * right);
      if (value !== value) {
        value = values[nearest + Math.min(columns - 1, Math.floor(x / scale))]!;
        if (value !== value) {
          continue;
        }
      }

      let index = 0;
      while (index < edges.length && value >= edges[index]!) {
        index++;
      }

      if (index > 0) {
        pixels[y * width + x] = inks[index - 1]!;
      } else if ((x + y) % period < hatchShare * period) {
        pixels[y * width + x] = hatch;
      }
    }
  }

  context.putImageData(image, 0, 0);
}

/** A colour as the four bytes of a pixel. */
function packed(ink: string, alpha: number): number {
  const value = parseInt(ink.slice(1), 16);
  return ((alpha << 24) | ((value & 255) << 16) | (value & 0xff00) | (value >> 16)) >>> 0;
}
