// The map module: the ground, the stations and the links. It asks the HTTP API for all that it draws; Blazor tells it what is selected
// (show) and that the plan was read again (reload), and hears of a pick and of where the map was moved to.
import { addProtocol, AttributionControl, Map as GroundMap, prewarm, removeProtocol, ScaleControl, setWorkerUrl, type Marker, type PaddingOptions } from "maplibre-gl";
import "maplibre-gl/dist/maplibre-gl.css";
import { askCheck, askPlan, type Check, type Plan, type Site } from "./api";
import { Contours } from "./contours";
import { Drags } from "./drag/drags";
import { groundStyle, heightTiles, type Theme } from "./ground";
import { Links } from "./links";
import { drawWhole } from "./opening";
import { Stations } from "./stations";
import { parseView, viewText, type BenchSettings, type BenchState, type Listener } from "./state";

setWorkerUrl(new URL(/* @vite-ignore */ "./maplibre-gl-worker.mjs", import.meta.url).href);
// The library's workers start while the page does.
prewarm();

const dark = matchMedia("(prefers-color-scheme: dark)");
const still = matchMedia("(prefers-reduced-motion: reduce)");

const letGoMilliseconds = 300;
const lowSheetPixels = 120;

/** Whether the map is drawn without a graphics processor. */
function isDrawnByProcessor(canvas: HTMLCanvasElement): boolean {
  const context = canvas.getContext("webgl2");
  const names = context?.getExtension("WEBGL_debug_renderer_info");
  return Boolean(names && /swiftshader|llvmpipe/i.test(String(context!.getParameter(names.UNMASKED_RENDERER_WEBGL))));
}

/** The map on its page. Blazor keeps one and calls its methods. */
export class Bench {
  private readonly map: GroundMap;
  private readonly stations: Stations;
  private readonly links: Links;
  private readonly drags: Drags;
  private contours: Contours | null = null;
  private plan: Plan | null = null;
  private check: Check | null = null;
  private checking: AbortController | null = null;
  private theme: Theme;
  private quietUntil = 0;
  private placing: string | null = null;
  private readonly hint = document.createElement("p");
  private raised = 0;
  private readonly themeChanged = () => this.restyle();
  /** The handle on the strip: its steps go to the API like those of a drag, and Blazor hears of the last. */
  private readonly handled = (event: Event) => {
    const handle = event.target;
    if (handle instanceof HTMLInputElement && handle.hasAttribute("data-height")) {
      handle.parentElement!.querySelector("output")!.textContent = `${handle.value} m`;
      this.raise(Number(handle.value), false);
      clearTimeout(this.raised);
      if (event.type === "change") {
        // An arrow key is a change for each step: it is let go when the keys rest.
        this.raised = window.setTimeout(() => this.raise(Number(handle.value), true), letGoMilliseconds);
      }
    }
  };

  constructor(
    private readonly host: HTMLElement,
    private readonly listener: Listener,
    private settings: BenchSettings,
    private state: BenchState,
  ) {
    // The page's line stands: from here on it hears and answers.
    performance.mark("page-ready");
    this.theme = this.wantedTheme();
    this.hint.className = "placing-hint";
    this.hint.setAttribute("role", "status");
    host.after(this.hint);
    this.openContours();
    const view = parseView(state.view);
    const bounds = settings.stations ?? settings.bounds;
    this.map = new GroundMap({
      container: host,
      style: groundStyle(settings, state, this.theme),
      ...(view
        ? { center: [view.longitude, view.latitude], zoom: view.zoom, bearing: view.bearing, pitch: view.pitch }
        : bounds
          ? { bounds, fitBoundsOptions: { padding: this.room(48), maxZoom: 13 } }
          : { center: [0, 20], zoom: 1.5 }),
      minZoom: 2,
      maxZoom: 18,
      maxPitch: 70,
      attributionControl: false,
      validateStyle: false,
      fadeDuration: 0,
    });
    if (settings.backgroundTiles) {
      this.map.addControl(new AttributionControl({ compact: true }), "bottom-left");
    }

    this.map.addControl(new ScaleControl({ maxWidth: 110 }), "top-left");
    document.documentElement.toggleAttribute("data-unaided", isDrawnByProcessor(this.map.getCanvas()));
    this.map.getCanvas().setAttribute("aria-label", "Map of the ground. Arrow keys move it, plus and minus zoom, shift with arrows turns and tilts it.");
    this.links = new Links(this.map);
    this.stations = new Stations(
      this.map,
      (key) => {
        if (performance.now() > this.quietUntil) {
          void this.listener.invokeMethodAsync("Picked", key).catch(() => undefined);
        }
      },
      (site, marker, element) => this.makeMovable(site, marker, element),
    );
    this.drags = new Drags(
      this.map,
      host,
      {
        linksVisible: (isVisible) => this.links.setVisible(isVisible),
        theme: () => this.theme,
        dropped: (trial) => void this.listener.invokeMethodAsync("Dropped", trial).catch(() => undefined),
        under: "rings",
      },
      state,
    );
    this.map.on("click", (event) => {
      if (this.placing) {
        this.placeAt(event.lngLat.lng, event.lngLat.lat);
      }
    });
    host.addEventListener("keydown", (event) => {
      if (this.placing && event.key === "Escape") {
        this.place(null);
      } else if (this.placing && event.key === "Enter") {
        const centre = this.map.getCenter();
        this.placeAt(centre.lng, centre.lat);
      }
    });
    this.map.on("style.load", () => {
      this.links.addTo(this.theme);
      this.drags.restyled();
      this.tilt();
    });
    this.map.on("moveend", (event) => {
      // Where the page itself moved the map to fit a selection is no wish of the reader's.
      if (event.originalEvent || (event as { told?: boolean }).told) {
        this.tellView();
      }
    });
    this.map.on("pitchend", () => this.tilt());
    const opened = drawWhole(this.map);
    this.map.once("idle", () => {
      opened();
      this.host.dataset.drawn = "true";
      performance.mark("map-drawn");
    });
    dark.addEventListener("change", this.themeChanged);
    document.addEventListener("input", this.handled);
    document.addEventListener("change", this.handled);
    void this.reload(settings);
  }

  /** The plan was read again: its stations, links and, where that changed, its ground. */
  async reload(settings: BenchSettings): Promise<void> {
    const isOtherGround = settings.groundHash !== this.settings.groundHash;
    this.settings = settings;
    if (isOtherGround) {
      this.openContours();
      this.restyle(true);
    }

    try {
      this.plan = await askPlan(this.state.trial);
      this.stations.set(this.plan, this.state);
      await this.recheck();
      this.drags.settle();
    } catch (fault) {
      console.warn(fault);
    }
  }

  /** Shows another state of the page. */
  show(state: BenchState): void {
    const before = this.state;
    this.state = state;
    if (before.theme !== state.theme || before.ground !== state.ground) {
      this.restyle(true);
    }

    if (!this.plan) {
      return;
    }

    this.drags.show(state);
    if (before.trial !== state.trial) {
      void this.reload(this.settings);
    } else if (before.fitOuts.join() !== state.fitOuts.join()) {
      this.stations.set(this.plan, state);
      void this.recheck();
    } else {
      this.stations.select(state);
      this.links.set(this.plan, this.check, state);
    }

    if (before.site !== state.site || before.to !== state.to) {
      // The panels take their new sizes first.
      requestAnimationFrame(() => this.bringIntoSight([state.site, state.to].filter((key) => key !== null)));
    }
  }

  zoom(steps: number): void {
    this.map.zoomTo(this.map.getZoom() + steps, { duration: this.duration(250) }, { told: true });
  }

  /** Lays the ground flat or tilts it. */
  turn(): void {
    const isFlat = this.map.getPitch() < 1;
    this.map.easeTo({ pitch: isFlat ? 58 : 0, bearing: isFlat ? this.map.getBearing() : 0, duration: this.duration(700) }, { told: true });
  }

  /** The whole plan in sight. */
  fit(): void {
    const bounds = this.plan?.bounds;
    if (bounds) {
      this.map.fitBounds([bounds.west, bounds.south, bounds.east, bounds.north], { padding: this.room(48), maxZoom: 13, duration: this.duration(500) }, { told: true });
    }
  }

  /** The next click on the map, or Enter in its middle, drops a station with a fit-out like this: "ferry-house/net-loft". Null ends that. */
  place(like: string | null): void {
    this.placing = like;
    this.host.toggleAttribute("data-placing", like !== null);
    this.hint.textContent = like ? "Click where to try a station, or move the map and press Enter. Escape ends it." : "";
    if (like) {
      this.map.getCanvas().focus();
    }
  }

  /** How far the reach shines through, from 0 to 1, while its slider moves. */
  shine(opacity: number): void {
    this.drags.reach.setOpacity(opacity);
  }

  /** The selected site's antenna is being raised or lowered to a height above the ground, in metres. */
  private raise(metres: number, isLetGo: boolean): void {
    const site = this.plan?.sites.find((one) => one.key === this.state.site);
    if (site) {
      const text = this.trialText(site, site.longitude, site.latitude, metres);
      if (isLetGo) {
        this.drags.drop(text);
      } else {
        this.drags.move(text);
      }
    }
  }

  private placeAt(longitude: number, latitude: number): void {
    const text = `like:${this.placing}@${latitude.toFixed(5)},${longitude.toFixed(5)}`;
    this.place(null);
    this.drags.drop(text);
  }

  private makeMovable(site: Site, marker: Marker, element: HTMLElement): void {
    if (site["fit-outs"].length === 0) {
      return;
    }

    const text = (longitude: number, latitude: number) => this.trialText(site, longitude, latitude);
    marker.setDraggable(true);
    element.setAttribute("aria-description", "Drag it, or hold Shift and press an arrow key, to try it elsewhere in steps of 100 m; with Ctrl as well, 10 m.");
    marker.on("drag", () => {
      const place = marker.getLngLat();
      this.drags.move(text(place.lng, place.lat));
    });
    marker.on("dragend", () => {
      this.quietUntil = performance.now() + 300;
      const place = marker.getLngLat();
      this.drags.drop(text(place.lng, place.lat));
    });
    this.drags.keys(element, marker, text);
  }

  /** The trial of a site at a place; a height that is tried there already goes along. */
  private trialText(site: Site, longitude: number, latitude: number, height?: number): string {
    const [before, numbers] = this.state.trialKey === site.key && this.state.trial ? (this.state.trial.split("@") as [string, string]) : [null, ""];
    const fitOut = this.state.fitOuts.find((one) => one.startsWith(site.key + "/")) ?? `${site.key}/${site["in-use"] ?? site["fit-outs"][0]!.key}`;
    const metres = height ?? numbers.split(",")[2];
    return `${before ?? fitOut}@${latitude.toFixed(5)},${longitude.toFixed(5)}${metres === undefined ? "" : "," + metres}`;
  }

  dispose(): void {
    clearTimeout(this.raised);
    this.drags.dispose();
    this.hint.remove();
    document.removeEventListener("input", this.handled);
    document.removeEventListener("change", this.handled);
    dark.removeEventListener("change", this.themeChanged);
    this.checking?.abort();
    this.map.remove();
    this.contours?.close();
    removeProtocol("contours");
  }

  private tellView(): void {
    const centre = this.map.getCenter();
    const text = viewText({ latitude: centre.lat, longitude: centre.lng, zoom: this.map.getZoom(), bearing: this.map.getBearing(), pitch: this.map.getPitch() });
    void this.listener.invokeMethodAsync("Moved", text).catch(() => undefined);
  }

  private async recheck(): Promise<void> {
    this.checking?.abort();
    const stop = (this.checking = new AbortController());
    this.links.set(this.plan!, this.check, this.state);
    try {
      this.check = await askCheck(this.state.fitOuts, this.state.trial, stop.signal);
      this.links.set(this.plan!, this.check, this.state);
      this.host.dataset.links = String(this.check.links.length);
    } catch (fault) {
      if (!stop.signal.aborted) {
        console.warn(fault);
      }
    }
  }

  private openContours(): void {
    this.contours?.close();
    removeProtocol("contours");
    this.contours = new Contours({ tiles: heightTiles(this.settings), largestZoom: this.settings.largestZoom });
    addProtocol("contours", this.contours.answer);
  }

  private duration(milliseconds: number): number {
    return still.matches ? 0 : milliseconds;
  }

  private wantedTheme(): Theme {
    return this.state.theme ?? (dark.matches ? "dark" : "light");
  }

  private restyle(always = false): void {
    const theme = this.wantedTheme();
    if (theme !== this.theme || always) {
      this.theme = theme;
      this.map.setStyle(groundStyle(this.settings, this.state, theme), { diff: false });
    }
  }

  /** The third dimension costs: it is there when the map is tilted, and only then. */
  private tilt(): void {
    const isTilted = this.map.getPitch() > 1 && this.map.getSource("heights-tilted") !== undefined;
    if (isTilted !== Boolean(this.map.getTerrain())) {
      this.map.setTerrain(isTilted ? { source: "heights-tilted", exaggeration: 1.3 } : null);
    }
  }

  private bringIntoSight(keys: string[]): void {
    const all = [...(this.plan?.sites ?? []), ...(this.plan?.neighbours ?? [])].filter((one) => keys.includes(one.key));
    const room = this.room(16, false);
    const { width, height } = this.host.getBoundingClientRect();
    const sheets = [...document.querySelectorAll(".sheet")].map((sheet) => sheet.getBoundingClientRect());
    const isHidden = all.some((one) => {
      const at = this.map.project([one.longitude, one.latitude]);
      const isUnderSheet = sheets.some((sheet) => at.x > sheet.left - 16 && at.x < sheet.right + 16 && at.y > sheet.top - 16 && at.y < sheet.bottom + 40);
      return isUnderSheet || at.x < room.left || at.x > width - room.right || at.y < room.top + 24 || at.y > height - room.bottom;
    });
    if (isHidden) {
      const longitudes = all.map((one) => one.longitude);
      const latitudes = all.map((one) => one.latitude);
      this.map.fitBounds([Math.min(...longitudes), Math.min(...latitudes), Math.max(...longitudes), Math.max(...latitudes)], {
        padding: this.room(56),
        maxZoom: Math.max(this.map.getZoom(), 11),
        duration: this.duration(500),
      });
    }
  }

  /** How much of the map lies under the panels, and a margin. The sheets on it stand at one side, or above where that would leave too little. */
  private room(margin: number, withSheets = true): Required<PaddingOptions> {
    const whole = this.host.getBoundingClientRect();
    const box = (selector: string) => document.querySelector(selector)?.getBoundingClientRect();
    const [bar, side, strip] = [box(".bar"), box(".side"), box(".strip")];
    const isBeside = side !== undefined && side.width < whole.width * 0.8;
    const below = isBeside ? (strip ? whole.bottom - strip.top : 0) : side ? whole.bottom - side.top : 0;
    const sheets = withSheets ? box(".sheets") : undefined;
    const isSheetBeside = sheets !== undefined && sheets.width < whole.width * 0.35;
    // A page without a path or a reach has but one low sheet, which may stand over the corner.
    const isSheetAbove = sheets !== undefined && !isSheetBeside;
    return {
      top: (isSheetAbove ? Math.min(sheets.bottom - whole.top, whole.height * 0.35) : (bar?.height ?? 0)) + margin,
      right: (isBeside ? whole.right - side.left : 0) + (isSheetBeside && sheets.height > lowSheetPixels ? sheets.width : 0) + margin,
      bottom: Math.min(whole.height * 0.6, below) + margin,
      left: margin,
    };
  }
}

export const open = (host: HTMLElement, listener: Listener, settings: BenchSettings, state: BenchState) => new Bench(host, listener, settings, state);
