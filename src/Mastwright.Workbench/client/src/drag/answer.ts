// One step of a drag, asked and read: a JSON header and the values of the reach behind it, in one answer.
import type { Verdict } from "../api";

export interface Range {
  low: number;
  median: number;
  high: number;
}

export interface DragLink {
  key: string;
  name: string;
  latitude: number;
  longitude: number;
  "distance-metres": number;
  verdict: Verdict;
  "out-margin-db": Range | null;
  "back-margin-db": Range | null;
  "margin-db": Range | null;
}

export interface DragPath {
  from: string;
  to: string;
  verdict: Verdict;
  text: string;
  "out-margin-db": Range | null;
  "back-margin-db": Range | null;
  "distance-metres": number;
  "from-height-metres": number | null;
  "to-height-metres": number | null;
  "distances-metres": number[];
  "ground-metres": number[];
  "surface-metres": number[];
  "ray-metres": number[];
  "fresnel-metres": number[];
  sea: number[];
  obstructions: { "distance-metres": number; "clearance-metres": number; "clearance-radii": number }[];
}

export interface Ledger {
  title: string;
  unit: string;
  total: number;
  lines: { label: string; value: number; source: string; note: string }[];
}

/** North-west, north-east, south-east, south-west: longitude and latitude. */
export type Corners = [[number, number], [number, number], [number, number], [number, number]];

export interface Reach {
  layer: string;
  receiver: string;
  title: string;
  unit: string;
  below: string;
  scale: number;
  classes: { from: number; ink: string }[];
  hatch: string;
  "cell-metres": number;
  quick: boolean;
  columns: number;
  rows: number;
  corners: Corners;
}

export interface DragAnswer {
  station: string;
  name: string;
  latitude: number;
  longitude: number;
  "height-metres": number | null;
  links: DragLink[];
  path: DragPath | null;
  ledger: Ledger | null;
  reach: Reach | null;
  problems: string[];
  values: Float32Array;
}

export interface DragQuestion {
  station: string;
  asker: string;
  "fit-outs": string[];
  to: string | null;
  back: boolean;
  links: boolean;
  reach: {
    "radius-metres": number;
    "cell-metres": number;
    quick: boolean;
    dark: boolean;
    layer: string;
    direction: string;
    receiver: string;
    "compare-fit-out": string | null;
  } | null;
}

export async function askDrag(question: DragQuestion, signal: AbortSignal): Promise<DragAnswer> {
  const answer = await fetch("/api/v1/drag", { method: "POST", signal, headers: { "content-type": "application/json" }, body: JSON.stringify(question) });
  if (!answer.ok) {
    const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
    throw new Error(problem?.detail ?? `The server answered ${answer.status}.`);
  }

  return decode(await answer.arrayBuffer());
}

export function decode(bytes: ArrayBuffer): DragAnswer {
  const length = new DataView(bytes).getInt32(0, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 4, length))) as Omit<DragAnswer, "values">;
  return { ...header, values: new Float32Array(bytes, 4 + length) };
}
