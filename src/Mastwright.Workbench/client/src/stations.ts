import { Marker, type Map as GroundMap } from "maplibre-gl";
import type { Plan, Site, Station } from "./api";
import type { BenchState } from "./state";

type Kind = "site" | "trial" | "neighbour";

const shapes: Record<Kind, string> = {
  // A mast on its foot with a ring on top: one's own site.
  site: "M8 22h8M12 22V10M12 10a3.6 3.6 0 1 1 0-7.2a3.6 3.6 0 0 1 0 7.2",
  // The same without a foot to stand on yet: a place for trying.
  trial: "M12 22v-2.5M12 17v-2.5M12 12.5v-2.5M12 10a3.6 3.6 0 1 1 0-7.2a3.6 3.6 0 0 1 0 7.2",
  // A ring with a short stem: somebody else's.
  neighbour: "M12 22v-6M12 16a4.6 4.6 0 1 1 0-9.2a4.6 4.6 0 0 1 0 9.2",
};

const vagueMetres = 100;
const linePixels = 18;

/** Half the width of a letter of a name, about. */
const letterPixels = 3.6;

/** Stations as buttons on the map: reached by keyboard in the plan's order, named for screen readers, drawn by the style sheet. */
export class Stations {
  private markers: { key: string; marker: Marker; element: HTMLButtonElement }[] = [];

  constructor(
    private readonly map: GroundMap,
    private readonly picked: (key: string) => void,
    private readonly movable?: (site: Site, marker: Marker, element: HTMLElement) => void,
  ) {
    this.map.on("move", () => this.makeRoom());
  }

  set(plan: Plan, state: BenchState): void {
    const focused = this.markers.find((one) => one.element === document.activeElement)?.key;
    for (const one of this.markers) {
      one.marker.remove();
    }

    const chosen = new Set(state.fitOuts.map((one) => one.split("/")[0]));
    this.markers = [
      ...plan.sites.map((site) => {
        const made = this.add(site, site["in-use"] || chosen.has(site.key) ? "site" : "trial");
        made.element.toggleAttribute("data-tried", site.key === state.trialKey);
        this.movable?.(site, made.marker, made.element);
        return made;
      }),
      ...plan.neighbours.map((neighbour) => this.add(neighbour, "neighbour")),
    ];
    this.select(state);
    this.markers.find((one) => one.key === focused)?.element.focus({ preventScroll: true });
  }

  select(state: BenchState): void {
    for (const { key, element } of this.markers) {
      const role = key === state.site ? "from" : key === state.to ? "to" : "";
      element.dataset.role = role;
      element.setAttribute("aria-pressed", role ? "true" : "false");
    }

    this.makeRoom();
  }

  /** Where names would lie over one another the less telling one steps back: it shows again under the pointer and with the focus. */
  private makeRoom(): void {
    const rank = (element: HTMLElement) => (element.dataset.role ? 0 : element.classList.contains("mark-site") ? 1 : element.classList.contains("mark-neighbour") ? 2 : 3);
    const taken: { x: number; y: number; half: number }[] = [];
    for (const { marker, element } of [...this.markers].sort((a, b) => rank(a.element) - rank(b.element))) {
      const { x, y } = this.map.project(marker.getLngLat());
      const half = (element.textContent?.length ?? 0) * letterPixels;
      const isFree = taken.every((other) => Math.abs(other.y - y) > linePixels || Math.abs(other.x - x) > other.half + half);
      element.toggleAttribute("data-quiet", !isFree);
      if (isFree) {
        taken.push({ x, y, half });
      }
    }
  }

  private add(station: Station, kind: Kind): { key: string; marker: Marker; element: HTMLButtonElement } {
    const element = document.createElement("button");
    element.type = "button";
    element.className = `mark mark-${kind}`;
    element.dataset.key = station.key;
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("viewBox", "0 0 24 24");
    svg.setAttribute("aria-hidden", "true");
    // A wider stroke of the paper's colour below lifts it off the ground; a shadow would be worked out anew for every frame.
    for (const name of ["halo", "shape"]) {
      const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
      path.setAttribute("d", shapes[kind]);
      path.setAttribute("class", name);
      svg.append(path);
    }

    const label = document.createElement("span");
    label.textContent = station.name;
    element.append(svg, label);
    element.addEventListener("click", (event) => {
      event.stopPropagation();
      this.picked(station.key);
    });
    const marker = new Marker({ element, anchor: "bottom" }).setLngLat([station.longitude, station.latitude]).addTo(this.map);
    // The library calls it a "map marker": it has a better name, and is a button.
    element.setAttribute("aria-label", `${station.name}, ${words(station, kind)}`);
    element.removeAttribute("role");
    return { key: station.key, marker, element };
  }
}

function words(station: Station, kind: Kind): string {
  const what = { site: "own site", trial: "place for trying, no fit-out in use", neighbour: "neighbour" }[kind];
  const radius = station["radius-metres"];
  return radius >= vagueMetres ? `${what}, place known to ${(radius / 1000).toFixed(1)} km` : what;
}
