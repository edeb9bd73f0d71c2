import type { GeoJSONSource, Map as GroundMap } from "maplibre-gl";
import type { Check, Plan, Station } from "./api";
import { verdictDashes, verdictInks, type Theme } from "./ground";
import type { BenchState } from "./state";

const circlePoints = 64;
const earthMetres = 6_371_000;
const vagueMetres = 100;

type Line = GeoJSON.Feature<GeoJSON.LineString>;

/** Lines between stations by verdict, and a ring round each station whose place is vague. */
export class Links {
  private lines: Line[] = [];
  private rings: Line[] = [];

  constructor(private readonly map: GroundMap) {}

  /** Puts the layers over a new style. */
  addTo(theme: Theme): void {
    const empty: GeoJSON.FeatureCollection = { type: "FeatureCollection", features: [] };
    this.map.addSource("links", { type: "geojson", data: empty });
    this.map.addSource("rings", { type: "geojson", data: empty });
    this.map.addLayer({ id: "rings", type: "line", source: "rings", paint: { "line-color": verdictInks[theme].unknown!, "line-width": 1.2, "line-dasharray": [3, 3] } });
    for (const [verdict, dashes] of Object.entries(verdictDashes)) {
      this.map.addLayer({
        id: `links-${verdict}`,
        type: "line",
        source: "links",
        filter: ["==", ["get", "verdict"], verdict],
        layout: { "line-cap": verdict === "ok" ? "round" : "butt" },
        paint: {
          "line-color": verdictInks[theme][verdict]!,
          "line-width": ["match", ["get", "weight"], "chosen", 4, "near", 2.2, 1.4],
          "line-opacity": ["match", ["get", "weight"], "chosen", 1, "near", 0.9, "far", 0.18, 0.6],
          ...(dashes.length > 1 ? { "line-dasharray": dashes } : {}),
        },
      });
    }

    this.show();
  }

  /** Takes the plan, its verdicts and the selection. */
  set(plan: Plan, check: Check | null, state: BenchState): void {
    const stations = new Map<string, Station>([...plan.sites, ...plan.neighbours].map((one) => [one.key, one]));
    const keyOf = (subject: string) => subject.split("/")[0]!;
    this.lines = [];
    for (const link of state.layer === "none" ? [] : (check?.links ?? [])) {
      const [from, to] = [keyOf(link.from), keyOf(link.to)];
      const [start, end] = [stations.get(from), stations.get(to)];
      if (start && end) {
        const touches = from === state.site || to === state.site;
        const isChosen = touches && (from === state.to || to === state.to);
        this.lines.push({
          type: "Feature",
          properties: { verdict: link.verdict, weight: isChosen ? "chosen" : touches && !state.to ? "near" : state.site ? "far" : "plain" },
          geometry: { type: "LineString", coordinates: [place(start), place(end)] },
        });
      }
    }

    this.rings = [...stations.values()].filter((one) => one["radius-metres"] >= vagueMetres).map(ring);
    this.show();
  }

  /** Whether the map's own lines are seen, while others stand before them. */
  setVisible(isVisible: boolean): void {
    for (const verdict of Object.keys(verdictDashes)) {
      if (this.map.getLayer(`links-${verdict}`)) {
        this.map.setLayoutProperty(`links-${verdict}`, "visibility", isVisible ? "visible" : "none");
      }
    }
  }

  private show(): void {
    const all = (features: Line[]): GeoJSON.FeatureCollection => ({ type: "FeatureCollection", features });
    this.map.getSource<GeoJSONSource>("links")?.setData(all(this.lines));
    this.map.getSource<GeoJSONSource>("rings")?.setData(all(this.rings));
  }
}

const place = (station: Station): [number, number] => [station.longitude, station.latitude];

function ring(station: Station): Line {
  const north = (station["radius-metres"] / earthMetres) * (180 / Math.PI);
  const east = north / Math.cos((station.latitude * Math.PI) / 180);
  const points = Array.from({ length: circlePoints + 1 }, (_, i): [number, number] => {
    const turn = (2 * Math.PI * i) / circlePoints;
    return [station.longitude + east * Math.sin(turn), station.latitude + north * Math.cos(turn)];
  });
  return { type: "Feature", properties: {}, geometry: { type: "LineString", coordinates: points } };
}
