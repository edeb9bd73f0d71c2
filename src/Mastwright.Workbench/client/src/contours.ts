import type { RequestParameters } from "maplibre-gl";
import type { ContourQuestion, ContourReply, ContourSetup } from "./contour-worker";

/** Height between lines, and between the stronger ones, in metres, from a zoom on. */
const steps: [zoom: number, minor: number, major: number][] = [
  [14, 10, 50],
  [12, 20, 100],
  [11, 50, 250],
  [10, 100, 500],
  [0, 200, 1000],
];

export const contourTiles = "contours://{z}/{x}/{y}";

const start = () => new Worker(new URL("./contour-worker.ts", import.meta.url), { type: "module" });

/** The first one starts while the page does. */
let ready: Worker | null = start();

/** Answers the map's questions for contour tiles by way of the worker. */
export class Contours {
  private readonly worker = ready ?? start();
  private readonly waiting = new Map<number, { resolve: (tile: ArrayBuffer) => void; reject: (fault: Error) => void }>();
  private last = 0;

  constructor(setup: ContourSetup) {
    ready = null;
    this.worker.onmessage = (event: MessageEvent<ContourReply>) => {
      const { id, tile, problem } = event.data;
      const one = this.waiting.get(id);
      this.waiting.delete(id);
      if (tile) {
        one?.resolve(tile);
      } else {
        one?.reject(new Error(problem));
      }
    };
    this.worker.postMessage(setup);
  }

  readonly answer = (request: RequestParameters, stop: AbortController): Promise<{ data: ArrayBuffer }> => {
    const [zoom, x, y] = request.url.slice("contours://".length).split("/").map(Number) as [number, number, number];
    const [, minor, major] = steps.find(([from]) => zoom >= from)!;
    const question: ContourQuestion = { id: ++this.last, zoom, x, y, levels: [minor, major] };
    stop.signal.addEventListener("abort", () => this.worker.postMessage({ cancel: question.id }));
    return new Promise((resolve, reject) => {
      this.waiting.set(question.id, { resolve: (data) => resolve({ data }), reject });
      this.worker.postMessage(question);
    });
  };

  close(): void {
    this.worker.terminate();
  }
}
