// The strip while something moves: the path's picture drawn from the arrays of the answer.
import type { DragPath } from "./answer";
import { onProcessor } from "./overlay";

const space = { left: 64, right: 40, top: 34, bottom: 26 };
const font = '"Mastwright Sans", sans-serif';

/** More points a pixel nobody sees. */
const pixelsAPoint = 2;

export class LiveStrip {
  private readonly canvas = document.createElement("canvas");
  private inks: Inks | null = null;

  constructor() {
    this.canvas.className = "live-strip";
    this.canvas.setAttribute("aria-hidden", "true");
  }

  hide(): void {
    this.canvas.remove();
    this.inks = null;
  }

  show(path: DragPath): void {
    const host = document.querySelector<HTMLElement>(".strip");
    if (!host || path["distances-metres"].length < 2) {
      return;
    }

    if (this.canvas.parentElement !== host) {
      host.append(this.canvas);
    }

    this.inks ??= inksOf(this.canvas);
    const [width, height, ratio] = [host.clientWidth, host.clientHeight, devicePixelRatio];
    if (this.canvas.width !== Math.round(width * ratio) || this.canvas.height !== Math.round(height * ratio)) {
      [this.canvas.width, this.canvas.height] = [Math.round(width * ratio), Math.round(height * ratio)];
    }

    const context = onProcessor(this.canvas);
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    draw(context, path, width, height, this.inks);
  }
}

type Inks = ReturnType<typeof inksOf>;

/** The page's colours as they are now, light or dark. */
function inksOf(element: HTMLElement) {
  const ink = (text: string) => {
    element.style.color = text;
    return getComputedStyle(element).color;
  };
  return {
    paper: ink("var(--paper)"),
    ink: ink("var(--ink)"),
    muted: ink("var(--muted)"),
    choice: ink("var(--choice)"),
    fails: ink("var(--fails)"),
    earth: ink("light-dark(#ddd0bb, #4b4235)"),
    earthEdge: ink("light-dark(#5a4a36, #d3bf9a)"),
    cover: ink("light-dark(#a3c0ba, #2b504c)"),
  };
}

function draw(context: CanvasRenderingContext2D, path: DragPath, width: number, height: number, inks: Inks): void {
  const all = path["distances-metres"];
  const every = Math.max(1, Math.floor((all.length * pixelsAPoint) / width));
  const shown = all.map((_, i) => i).filter((i) => i % every === 0 || i === all.length - 1);
  const pick = (values: number[]) => shown.map((i) => values[i]!);
  const distances = pick(all);
  const [ground, surface, ray, fresnel] = [pick(path["ground-metres"]), pick(path["surface-metres"]), pick(path["ray-metres"]), pick(path["fresnel-metres"])];
  const last = distances.length - 1;
  const length = distances[last]!;
  const low = Math.min(...ground);
  const high = Math.max(...surface, ...ray.map((metres, i) => metres + fresnel[i]!));
  const room = Math.max(10, high - low);
  const floor = height - space.bottom;
  const x = (metres: number) => space.left + (metres / length) * (width - space.left - space.right);
  const y = (metres: number) => floor - ((metres - low) / room) * (height - space.top - space.bottom);
  const along = (values: number[], first = 0, end = last) => {
    for (let i = first; i <= end; i++) {
      context.lineTo(x(distances[i]!), y(values[i]!));
    }
  };
  const back = (values: number[], first = 0, end = last) => {
    for (let i = end; i >= first; i--) {
      context.lineTo(x(distances[i]!), y(values[i]!));
    }
  };
  const area = (fill: string, edge: string | null, outline: () => void) => {
    context.beginPath();
    outline();
    context.closePath();
    context.fillStyle = fill;
    context.fill();
    if (edge) {
      context.strokeStyle = edge;
      context.lineWidth = 1.2;
      context.stroke();
    }
  };
  const text = (words: string, left: number, top: number, ink: string, size = 13, align: CanvasTextAlign = "left") => {
    context.font = `${size}px ${font}`;
    context.textAlign = align;
    context.fillStyle = ink;
    context.fillText(words, left, top);
  };

  context.setLineDash([]);
  context.fillStyle = inks.paper;
  context.fillRect(0, 0, width, height);
  area(inks.cover, null, () => (along(surface), back(ground)));
  area(inks.earth, inks.earthEdge, () => {
    along(ground);
    context.lineTo(x(length), floor);
    context.lineTo(x(0), floor);
  });
  context.globalAlpha = 0.08;
  const zone = (share: number) => ray.map((metres, i) => metres + share * fresnel[i]!);
  area(inks.choice, null, () => (along(zone(1)), back(zone(-1))));
  context.globalAlpha = 1;
  for (const [share, dashes] of [[1, []], [-1, []], [-0.6, [6, 4]]] as const) {
    context.beginPath();
    along(zone(share));
    context.setLineDash([...dashes]);
    context.strokeStyle = inks.choice;
    context.lineWidth = 1.2;
    context.stroke();
  }

  context.setLineDash([]);
  for (const [first, end] of runs(distances.length, (i) => surface[i]! > ray[i]!)) {
    context.globalAlpha = 0.45;
    area(inks.fails, null, () => (along(surface, first, end), back(ray, first, end)));
    context.globalAlpha = 1;
  }

  context.strokeStyle = inks.ink;
  context.lineWidth = 1.8;
  context.beginPath();
  along(ray);
  context.stroke();
  for (const [i, tall] of [[0, path["from-height-metres"]], [last, path["to-height-metres"]]] as const) {
    const [foot, head] = [y(ground[i]!), y(ray[i]!)];
    context.lineWidth = 3;
    context.beginPath();
    context.moveTo(x(distances[i]!), foot);
    context.lineTo(x(distances[i]!), head);
    context.stroke();
    context.beginPath();
    context.arc(x(distances[i]!), head, 4.5, 0, 2 * Math.PI);
    context.fillStyle = inks.paper;
    context.fill();
    context.lineWidth = 2;
    context.stroke();
    if (tall !== null) {
      text(`${tall.toFixed(1)} m`, x(distances[i]!) + (i === 0 ? 10 : -10), Math.max(space.top + 8, head - 9), inks.ink, 13, i === 0 ? "left" : "right");
    }
  }

  const margin = (range: DragPath["out-margin-db"]) => (range ? signed(range.median) + " dB" : "?");
  text(`${path.from} → ${path.to} ${margin(path["out-margin-db"])}, back ${margin(path["back-margin-db"])}, ${(length / 1000).toFixed(1)} km`, space.left, 20, inks.ink);
  const worst = path.obstructions.reduce<(typeof path.obstructions)[number] | null>((a, b) => (a && a["clearance-radii"] <= b["clearance-radii"] ? a : b), null);
  text(worst ? worstWords(worst) : "0.6 of the first Fresnel zone is free all the way", space.left, height - 8, inks.muted, 12);
  text(`${Math.round(low)} to ${Math.round(high)} m`, width - space.right, height - 8, inks.muted, 12, "right");
}

function worstWords(worst: DragPath["obstructions"][number]): string {
  const metres = worst["clearance-metres"];
  const where = `at ${(worst["distance-metres"] / 1000).toFixed(1)} km`;
  return metres < 0 ? `${Math.abs(metres).toFixed(0)} m above the ray ${where}` : `${metres.toFixed(0)} m clear ${where}, ${worst["clearance-radii"].toFixed(2)} of the first Fresnel zone`;
}

/** First and last index of every run for which something holds. */
function runs(count: number, holds: (i: number) => boolean): [number, number][] {
  const found: [number, number][] = [];
  for (let i = 0; i < count; i++) {
    const first = i;
    while (i < count && holds(i)) {
      i++;
    }

    if (i > first) {
      found.push([first, i - 1]);
    }
  }

  return found;
}

export const signed = (value: number) => (value < 0 ? "−" : "+") + Math.abs(value).toFixed(1);

export const escape = (text: string) => text.replace(/[&<>"]/g, (one) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[one]!);
