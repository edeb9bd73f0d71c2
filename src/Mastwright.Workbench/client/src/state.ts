/** What the page shows: Blazor holds it (it is the page's address) and hands the whole of it over on every change. */
export interface BenchState {
  site: string | null;
  to: string | null;
  fitOuts: string[];
  layer: string;
  ground: string;
  view: string | null;
  theme: "light" | "dark" | null;
  back: boolean;
  /** The station that is tried, as text, and the key of its marker. */
  trial: string | null;
  trialKey: string | null;
  /** What of the reach is shown: a layer, or null for nothing. */
  reach: string | null;
  direction: string;
  receiver: string;
  /** Radius in kilometres. */
  radius: number;
  compare: string | null;
  /** 0 to 1. */
  opacity: number;
}

/** What changes only with the ground on the disk. */
export interface BenchSettings {
  groundHash: string;
  /** Hash of the plan file as it was read: a change that is kept names it. */
  planHash: string;
  largestZoom: number;
  bounds: [west: number, south: number, east: number, north: number] | null;
  stations: [west: number, south: number, east: number, north: number] | null;
  backgroundTiles: string | null;
}

/** The Blazor component behind the map. */
export interface Listener {
  invokeMethodAsync(method: "Picked", key: string): Promise<void>;
  invokeMethodAsync(method: "Moved", view: string): Promise<void>;
  invokeMethodAsync(method: "Dropped", trial: string): Promise<void>;
}

export interface View {
  latitude: number;
  longitude: number;
  zoom: number;
  bearing: number;
  pitch: number;
}

/** "46.4,-18.6,11.2" and, where the map is turned or tilted, bearing and pitch after it. */
export function viewText(view: View): string {
  const numbers = [view.latitude.toFixed(5), view.longitude.toFixed(5), view.zoom.toFixed(2)];
  if (Math.round(view.bearing) !== 0 || Math.round(view.pitch) !== 0) {
    numbers.push(view.bearing.toFixed(0), view.pitch.toFixed(0));
  }

  return numbers.join(",");
}

export function parseView(text: string | null): View | null {
  const numbers = (text ?? "").split(",").map(Number);
  const [latitude, longitude, zoom, bearing = 0, pitch = 0] = numbers;
  const isView = numbers.length >= 3 && numbers.every(Number.isFinite) && Math.abs(latitude!) <= 85 && Math.abs(longitude!) <= 180;
  return isView ? { latitude: latitude!, longitude: longitude!, zoom: zoom!, bearing, pitch } : null;
}
