// The strip while something moves: the path's picture drawn from the arrays of the answer, and the handle that raises and lowers the mast.
import type { DragPath } from "./answer";

const space = { left: 64, right: 40, top: 34, bottom: 26 };

export class LiveStrip {
  private readonly svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");

  constructor() {
    this.svg.classList.add("live-strip");
    this.svg.setAttribute("aria-hidden", "true");
  }

  hide(): void {
    this.svg.remove();
  }

  show(path: DragPath): void {
    const host = document.querySelector<HTMLElement>(".strip");
    if (!host || path["distances-metres"].length < 2) {
      return;
    }

    if (this.svg.parentElement !== host) {
      host.append(this.svg);
    }

    this.svg.innerHTML = picture(path, host.clientWidth, host.clientHeight);
  }
}

function picture(path: DragPath, width: number, height: number): string {
  const distances = path["distances-metres"];
  const [ground, surface, ray, fresnel] = [path["ground-metres"], path["surface-metres"], path["ray-metres"], path["fresnel-metres"]];
  const length = distances[distances.length - 1]!;
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < distances.length; i++) {
    low = Math.min(low, ground[i]!);
    high = Math.max(high, surface[i]!, ray[i]! + fresnel[i]!);
  }

  const room = Math.max(10, high - low);
  const x = (metres: number) => +(space.left + (metres / length) * (width - space.left - space.right)).toFixed(1);
  const y = (metres: number) => +(height - space.bottom - ((metres - low) / room) * (height - space.top - space.bottom)).toFixed(1);
  const line = (values: (i: number) => number) => distances.map((metres, i) => `${x(metres)},${y(values(i))}`).join(" ");
  const back = (values: (i: number) => number) => distances.map((_, i) => distances.length - 1 - i).map((i) => `${x(distances[i]!)},${y(values(i))}`).join(" ");
  const floor = height - space.bottom;
  const worst = path.obstructions.reduce<(typeof path.obstructions)[number] | null>((a, b) => (a && a["clearance-radii"] <= b["clearance-radii"] ? a : b), null);
  const last = distances.length - 1;
  const margin = (range: DragPath["out-margin-db"]) => (range ? signed(range.median) + " dB" : "?");
  const mast = (i: number, tall: number | null) =>
    `<line class="mast" x1="${x(distances[i]!)}" x2="${x(distances[i]!)}" y1="${y(ground[i]!)}" y2="${y(ray[i]!)}"/><circle class="head" cx="${x(distances[i]!)}" cy="${y(ray[i]!)}" r="4.5"/>` +
    `<text x="${x(distances[i]!) + (i === 0 ? 10 : -10)}" y="${Math.max(space.top + 8, y(ray[i]!) - 9)}" text-anchor="${i === 0 ? "start" : "end"}">${tall === null ? "" : tall.toFixed(1) + " m"}</text>`;
  return (
    `<rect class="paper" width="${width}" height="${height}"/>` +
    `<polygon class="cover" points="${line((i) => surface[i]!)} ${back((i) => ground[i]!)}"/>` +
    `<polygon class="ground" points="${line((i) => ground[i]!)} ${x(length)},${floor} ${x(0)},${floor}"/>` +
    `<polygon class="zone" points="${line((i) => ray[i]! + fresnel[i]!)} ${back((i) => ray[i]! - fresnel[i]!)}"/>` +
    `<polyline class="clear" points="${line((i) => ray[i]! - 0.6 * fresnel[i]!)}"/>` +
    blocked(path, x, y) +
    `<polyline class="ray" points="${x(0)},${y(ray[0]!)} ${x(length)},${y(ray[last]!)}"/>` +
    mast(0, path["from-height-metres"]) +
    mast(last, path["to-height-metres"]) +
    `<text class="head-line" x="${space.left}" y="20">${escape(path.from)} → ${escape(path.to)} <tspan>${margin(path["out-margin-db"])}</tspan>, back <tspan>${margin(path["back-margin-db"])}</tspan>, ${(length / 1000).toFixed(1)} km</text>` +
    `<text class="foot" x="${space.left}" y="${height - 8}">${worst ? escape(worstWords(worst)) : "0.6 of the first Fresnel zone is free all the way"}</text>` +
    `<text class="foot" x="${width - space.right}" y="${height - 8}" text-anchor="end">${Math.round(low)} to ${Math.round(high)} m</text>`
  );
}

function worstWords(worst: DragPath["obstructions"][number]): string {
  const metres = worst["clearance-metres"];
  const where = `at ${(worst["distance-metres"] / 1000).toFixed(1)} km`;
  return metres < 0 ? `${Math.abs(metres).toFixed(0)} m above the ray ${where}` : `${metres.toFixed(0)} m clear ${where}, ${worst["clearance-radii"].toFixed(2)} of the first Fresnel zone`;
}

/** Where ground or cover stands above the ray. */
function blocked(path: DragPath, x: (metres: number) => number, y: (metres: number) => number): string {
  const [distances, surface, ray] = [path["distances-metres"], path["surface-metres"], path["ray-metres"]];
  let shapes = "";
  for (let i = 0; i < distances.length; i++) {
    const first = i;
    while (i < distances.length && surface[i]! > ray[i]!) {
      i++;
    }

    if (i > first) {
      const run = Array.from({ length: i - first }, (_, k) => first + k);
      shapes += `<polygon class="blocked" points="${run.map((k) => `${x(distances[k]!)},${y(surface[k]!)}`).join(" ")} ${run.reverse().map((k) => `${x(distances[k]!)},${y(ray[k]!)}`).join(" ")}"/>`;
    }
  }

  return shapes;
}

export const signed = (value: number) => (value < 0 ? "−" : "+") + Math.abs(value).toFixed(1);

export const escape = (text: string) => text.replace(/[&<>"]/g, (one) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[one]!);
