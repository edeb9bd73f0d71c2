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

const query = (parts: [string, string][]) => (parts.length ? "?" + parts.map(([name, value]) => `${name}=${encodeURIComponent(value)}`).join("&") : "");

const ofTrial = (trial: string | null): [string, string][] => (trial ? [["trial", trial]] : []);

export const askPlan = (trial: string | null = null) => ask<Plan>("plan" + query(ofTrial(trial)));

export const askCheck = (fitOuts: string[], trial: string | null, signal?: AbortSignal) =>
  ask<Check>("check" + query([...fitOuts.map((one): [string, string] => ["fit-out", one]), ...ofTrial(trial)]), signal);
