// Moving a station about: while it moves only its newest place is asked, and what comes back is drawn; Blazor hears of the drop. After that
// the full reach settles.
import type { Map as GroundMap, Marker } from "maplibre-gl";
import type { Theme } from "../ground";
import type { BenchState } from "../state";
import { askDrag, type DragAnswer, type DragQuestion } from "./answer";
import { LiveOverlay } from "./overlay";
import { LivePanel } from "./panel";
import { ReachLayer } from "./reach";
import { LiveStrip, signed } from "./strip";

/** A question that takes longer than this is given up for a newer one. */
const patienceMilliseconds = 1500;
const settleMilliseconds = 350;
const earthMetres = 6_371_000;
const stepMetres = 100;
const fineStepMetres = 10;
const quickCells = 112;

export interface DragHooks {
  /** Shows or hides the map's own lines. */
  linksVisible(isVisible: boolean): void;
  theme(): Theme;
  /** A station was let go: the text of the trial. */
  dropped(trial: string): void;
  /** What everything is drawn below. */
  under: string;
}

export class Drags {
  readonly reach: ReachLayer;
  private readonly overlay: LiveOverlay;
  private readonly strip = new LiveStrip();
  private readonly panel = new LivePanel();
  private readonly asker = crypto.randomUUID?.() ?? String(Math.random());
  private running: { stop: AbortController; since: number } | null = null;
  private waiting: { station: string; began: number } | null = null;
  private settling: AbortController | null = null;
  private timer = 0;
  private isMoving = false;

  constructor(
    map: GroundMap,
    private readonly host: HTMLElement,
    private readonly hooks: DragHooks,
    private state: BenchState,
  ) {
    this.reach = new ReachLayer(map, hooks.under);
    this.overlay = new LiveOverlay(map);
    this.reach.setOpacity(state.opacity);
    map.on("click", (event) => this.read(event.lngLat.lng, event.lngLat.lat));
    map.on("mousemove", (event) => this.read(event.lngLat.lng, event.lngLat.lat));
    map.on("mouseout", () => this.value(""));
  }

  /** The page shows another state: what moved has come to rest there. */
  show(state: BenchState): void {
    const before = this.state;
    this.state = state;
    this.reach.setOpacity(state.opacity);
    this.rest();
    if (JSON.stringify({ ...before, opacity: 0, view: "" }) !== JSON.stringify({ ...state, opacity: 0, view: "" }) || !this.reach.shown) {
      this.settle();
    }
  }

  /** Blazor has drawn what was dropped. */
  rest(): void {
    if (!this.isMoving) {
      this.strip.hide();
      this.panel.hide();
    }
  }

  /** A place of a station that is being moved. The text is that of a trial. */
  move(station: string): void {
    this.isMoving = true;
    this.settling?.abort();
    clearTimeout(this.timer);
    this.waiting = { station, began: performance.now() };
    if (this.running && performance.now() - this.running.since > patienceMilliseconds) {
      this.running.stop.abort();
    }

    void this.next();
  }

  /** It was let go there. */
  drop(station: string): void {
    this.isMoving = false;
    this.waiting = null;
    this.running?.stop.abort();
    this.hooks.dropped(station);
  }

  /** Moves a marker by keys: Shift and arrows 100 m, with Ctrl as well 10 m. It is let go when the keys rest. */
  keys(element: HTMLElement, marker: Marker, text: (longitude: number, latitude: number) => string): void {
    let timer = 0;
    element.addEventListener("keydown", (event) => {
      const [east, north] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
      if (!event.shiftKey || (east === 0 && north === 0)) {
        return;
      }

      event.preventDefault();
      event.stopPropagation();
      const metres = event.ctrlKey ? fineStepMetres : stepMetres;
      const place = marker.getLngLat();
      const degrees = (metres / earthMetres) * (180 / Math.PI);
      place.lat += north! * degrees;
      place.lng += (east! * degrees) / Math.cos((place.lat * Math.PI) / 180);
      marker.setLngLat(place);
      this.move(text(place.lng, place.lat));
      clearTimeout(timer);
      timer = window.setTimeout(() => this.drop(text(place.lng, place.lat)), 700);
    });
  }

  /** Works the reach out in full where the reader has come to rest. */
  settle(): void {
    this.settling?.abort();
    clearTimeout(this.timer);
    const station = this.subject();
    if (!station || this.state.reach === null) {
      this.reach.clear();
      this.land();
      this.legend();
      delete this.host.dataset.reach;
      return;
    }

    const stop = (this.settling = new AbortController());
    this.timer = window.setTimeout(async () => {
      try {
        this.host.dataset.reach = "settling";
        const answer = await askDrag(this.question(station, false, false), stop.signal);
        this.draw(answer, false);
        this.host.dataset.reach = answer.reach ? "settled" : "none";
      } catch (fault) {
        if (!stop.signal.aborted) {
          console.info(String(fault));
          this.reach.clear();
          this.land();
          this.legend([fault instanceof Error ? fault.message : String(fault)]);
          this.host.dataset.reach = "none";
        }
      }
    }, settleMilliseconds);
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.running?.stop.abort();
    this.settling?.abort();
    this.overlay.hide();
    this.strip.hide();
    this.panel.hide();
  }

  /** The style is new: the layers come over it again. */
  restyled(): void {
    this.reach.addTo();
  }

  private async next(): Promise<void> {
    if (this.running || !this.waiting) {
      return;
    }

    const asked = this.waiting;
    this.waiting = null;
    const stop = new AbortController();
    this.running = { stop, since: performance.now() };
    try {
      const answer = await askDrag(this.question(asked.station, true, true), stop.signal);
      if (this.isMoving) {
        this.draw(answer, true);
        // From the pointer to the frame that shows it: the next one is drawn after the first of these calls, and is out by the second.
        requestAnimationFrame(() =>
          requestAnimationFrame(() => {
            performance.measure("drag-step", { start: asked.began, end: performance.now() });
            this.host.dataset.steps = String(Number(this.host.dataset.steps ?? 0) + 1);
          }),
        );
      }
    } catch (fault) {
      if (!stop.signal.aborted) {
        console.info(String(fault));
      }
    } finally {
      this.running = null;
      void this.next();
    }
  }

  private question(station: string, isQuick: boolean, withLinks: boolean): DragQuestion {
    const state = this.state;
    const radius = state.radius * 1000;
    return {
      station,
      asker: this.asker,
      "fit-outs": state.fitOuts,
      to: withLinks ? state.to : null,
      back: state.back,
      links: withLinks,
      reach: {
        "radius-metres": radius,
        "cell-metres": isQuick ? Math.max(90, radius / quickCells) : Math.max(30, radius / 330),
        quick: isQuick,
        dark: (state.theme ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light")) === "dark",
        layer: state.reach ?? "margin",
        direction: state.direction,
        receiver: state.receiver,
        "compare-fit-out": state.compare,
      },
    };
  }

  /** The station whose reach is shown: what is tried, else the selected one. */
  private subject(): string | null {
    const state = this.state;
    if (state.trial && (!state.site || state.trialKey === state.site)) {
      return state.trial;
    }

    return state.site ? (state.fitOuts.find((one) => one.startsWith(state.site + "/")) ?? state.site) : null;
  }

  private draw(answer: DragAnswer, isLive: boolean): void {
    if (isLive) {
      this.lift();
      const place: [number, number] = [answer.longitude, answer.latitude];
      this.overlay.show(
        answer.reach && this.reach.picture(answer.reach, answer.values),
        answer.links.map((link) => ({ from: place, to: [link.longitude, link.latitude], verdict: link.verdict, isChosen: link.key === this.state.to })),
        this.hooks.theme(),
      );
      this.panel.show(answer);
      if (answer.path) {
        this.strip.show(answer.path);
      }
    } else if (answer.reach) {
      this.reach.show(answer.reach, answer.values);
      this.land();
    } else {
      this.reach.clear();
      this.land();
    }

    this.legend(answer.problems);
  }

  /** What moves is drawn before the map; the map's own lines and reach are those of the old place. */
  private lift(): void {
    if (!this.overlay.isShown) {
      this.hooks.linksVisible(false);
      this.reach.setVisible(false);
    }
  }

  /** It stands still again: the map shows it. */
  private land(): void {
    if (this.overlay.isShown) {
      this.overlay.hide();
      this.hooks.linksVisible(true);
      this.reach.setVisible(true);
    }
  }

  private legend(problems: string[] = []): void {
    const place = document.querySelector<HTMLElement>(".reach-legend");
    const reach = this.reach.shown;
    if (!place) {
      return;
    }

    // While something moves the same is not said again and again.
    const told = JSON.stringify([reach && { ...reach, values: 0, corners: 0 }, problems]);
    if (place.dataset.told === told && place.childElementCount > 0) {
      return;
    }

    place.dataset.told = told;
    this.value("");
    const number = (value: number) => (value * (reach?.scale ?? 1)).toFixed(0).replace("-", "−");
    place.replaceChildren(
      ...(reach
        ? [
            item("p", "title", `${reach.title}, in ${reach.unit}`),
            swatch("hatched", "", reach.below, "below"),
            ...reach.classes.map((one, i) => swatch("", one.ink, i + 1 < reach.classes.length ? `${number(one.from)} to ${number(reach.classes[i + 1]!.from)}` : `${number(one.from)} and more`, number(one.from))),
            item("p", "by", `By ${reach.receiver}, cells of ${reach["cell-metres"].toFixed(0)} m${reach.quick ? ", quick" : ""}`),
          ]
        : problems.map((problem) => item("p", "by", problem))),
    );
  }

  private read(longitude: number, latitude: number): void {
    const reach = this.reach.shown;
    const value = reach ? this.reach.valueAt(longitude, latitude) : null;
    this.value(reach && value !== null ? `${reach.unit === "%" ? value.toFixed(0) : signed(value)} ${reach.unit}` : "");
  }

  private value(text: string): void {
    const place = document.querySelector<HTMLElement>(".reach-value");
    if (place) {
      place.textContent = text || (this.reach.shown ? "Point at the map to read a value." : "");
      place.toggleAttribute("data-none", !text);
    }
  }
}

function item(tag: string, name: string, text: string): HTMLElement {
  const one = document.createElement(tag);
  one.className = name;
  one.textContent = text;
  return one;
}

/** A colour and what it means; in the hand there is room for few letters. */
function swatch(name: string, ink: string, text: string, short: string): HTMLElement {
  const one = item("p", "swatch", "");
  const patch = item("span", "patch " + name, "");
  patch.style.background = ink;
  one.append(patch, item("span", "long", text), item("span", "short", short));
  return one;
}
