// What the module reads of the HTTP API. The shapes are those of docs/guide/json.md; only what is used here is named.

export type Verdict = "ok" | "tight" | "fails" | "unknown";

export interface Station {
  key: string;
  name: string;
  latitude: number;
  longitude: number;
  "radius-metres": number;
}

export interface Site extends Station {
  "in-use": string | null;
  "fit-outs": { key: string; name: string }[];
}

export interface Neighbour extends Station {
  own: boolean;
}

export interface Plan {
  reading: number;
  "ground-hash": string | null;
  bounds: { south: number; west: number; north: number; east: number } | null;
  sites: Site[];
  neighbours: Neighbour[];
}

export interface Link {
  from: string;
  to: string;
  verdict: Verdict;
  out: { "margin-db": { median: number } | null };
  back: { "margin-db": { median: number } | null };
}

export interface Check {
  links: Link[];
}

/** Asks the API; a refusal is an error with the server's own words. */
export async function ask<T>(path: string, signal?: AbortSignal): Promise<T> {
  const answer = await fetch(`/api/v1/${path}`, { signal: signal ?? null, headers: { accept: "application/json" } });
  if (!answer.ok) {
    const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
    throw new Error(problem?.detail ?? `The server answered ${answer.status}.`);
  }

  return (await answer.json()) as T;
}

export const askPlan = () => ask<Plan>("plan");

export const askCheck = (fitOuts: string[], signal?: AbortSignal) =>
  ask<Check>("check" + (fitOuts.length ? "?" + fitOuts.map((one) => "fit-out=" + encodeURIComponent(one)).join("&") : ""), signal);
