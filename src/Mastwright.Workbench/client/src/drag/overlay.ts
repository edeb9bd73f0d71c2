// What moves over a ground that stands still: the reach and the links of a station while it is dragged, drawn beside the map and not by it. The
// map would draw all of itself anew for every step, which takes long where no graphics processor helps.
import type { Map as GroundMap } from "maplibre-gl";
import type { Verdict } from "../api";
import { verdictDashes, verdictInks, type Theme } from "../ground";
import type { Corners } from "./answer";

const edgePixels = 3;
const stepPixels = 64;

export interface LiveLine {
  from: [number, number];
  to: [number, number];
  verdict: Verdict;
  isChosen: boolean;
}

export class LiveOverlay {
  private readonly canvas = document.createElement("canvas");
  private reach: { picture: HTMLCanvasElement; corners: Corners; opacity: number } | null = null;
  private lines: LiveLine[] = [];
  private theme: Theme = "light";
  private readonly moved = () => this.draw();

  constructor(private readonly map: GroundMap) {
    this.canvas.className = "live-overlay";
    this.canvas.setAttribute("aria-hidden", "true");
  }

  get isShown(): boolean {
    return this.canvas.parentElement !== null;
  }

  show(reach: typeof this.reach, lines: LiveLine[], theme: Theme): void {
    [this.reach, this.lines, this.theme] = [reach, lines, theme];
    if (!this.isShown) {
      // Above the map's own canvas, below the stations.
      this.map.getCanvas().after(this.canvas);
      this.map.on("move", this.moved);
      this.map.on("resize", this.moved);
    }

    this.draw();
  }

  hide(): void {
    if (this.isShown) {
      this.canvas.remove();
      this.map.off("move", this.moved);
      this.map.off("resize", this.moved);
    }
  }

  private draw(): void {
    const corners = this.reach?.corners.map((corner) => this.map.project(corner)) ?? [];
    const ends = this.lines.map(({ from, to }) => [this.map.project(from), this.map.project(to)] as const);
    const box = this.place([...corners, ...ends.flat()]);
    const context = onProcessor(this.canvas);
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    if (!box) {
      return;
    }

    const { ratio, left, top } = box;
    if (this.reach) {
      const { picture, opacity } = this.reach;
      // A square of a transverse Mercator grid is one on the map too, but for less than a pixel at these sizes: three corners say it all.
      const [nw, ne, , sw] = corners;
      context.setTransform(
        (ratio * (ne!.x - nw!.x)) / picture.width,
        (ratio * (ne!.y - nw!.y)) / picture.width,
        (ratio * (sw!.x - nw!.x)) / picture.height,
        (ratio * (sw!.y - nw!.y)) / picture.height,
        ratio * (nw!.x - left),
        ratio * (nw!.y - top),
      );
      context.globalAlpha = opacity;
      context.drawImage(picture, 0, 0);
      context.globalAlpha = 1;
    }

    context.setTransform(ratio, 0, 0, ratio, -ratio * left, -ratio * top);
    this.lines.forEach(({ verdict, isChosen }, i) => {
      const [start, end] = ends[i]!;
      const width = isChosen ? 4 : 2.2;
      const dashes = verdictDashes[verdict]!;
      context.beginPath();
      context.moveTo(start.x, start.y);
      context.lineTo(end.x, end.y);
      context.lineWidth = width;
      context.strokeStyle = verdictInks[this.theme][verdict]!;
      context.setLineDash(dashes.length > 1 ? dashes.map((dash) => dash * width) : []);
      context.stroke();
    });
  }

  /** Lays the canvas over what is to be drawn and not over all of the map: each pixel of it is carried to the screen. Null when that is off the map. */
  private place(points: { x: number; y: number }[]): { ratio: number; left: number; top: number } | null {
    const under = this.map.getCanvas();
    const ratio = under.width / under.clientWidth;
    const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
    const [left, top] = [Math.floor(Math.max(0, Math.min(...xs) - edgePixels)), Math.floor(Math.max(0, Math.min(...ys) - edgePixels))];
    const wide = Math.min(under.clientWidth, Math.max(...xs) + edgePixels) - left;
    const high = Math.min(under.clientHeight, Math.max(...ys) + edgePixels) - top;
    if (!(wide > 0 && high > 0)) {
      return null;
    }

    // In whole steps, so that it seldom needs another size.
    const [width, height] = [wide, high].map((pixels) => Math.ceil(pixels / stepPixels) * stepPixels) as [number, number];
    if (this.canvas.width !== Math.round(width * ratio) || this.canvas.height !== Math.round(height * ratio)) {
      [this.canvas.width, this.canvas.height] = [Math.round(width * ratio), Math.round(height * ratio)];
      [this.canvas.style.width, this.canvas.style.height] = [`${width}px`, `${height}px`];
    }

    this.canvas.style.transform = `translate(${left}px, ${top}px)`;
    return { ratio, left, top };
  }
}

/** A canvas that the processor draws: what is drawn anew for every step is not worth the way through a graphics processor. */
export function onProcessor(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  return canvas.getContext("2d", { willReadFrequently: true })!;
}
