// What changes the plan goes through here: every request shows the word that came with the page, and names the state that it is based on.

export interface Draft {
  id: string;
  time: string;
  "based-on": string;
  text: string;
}

export interface PlanText {
  file: string;
  hash: string;
  text: string;
  undo: { time: string; what: string } | null;
  notes: string[];
  drafts: Draft[];
}

/** The file was changed meanwhile: what was to be written, what the file is now, and both together where they touch different places. */
export interface Conflict {
  what: string;
  yours: string;
  theirs: string;
  "theirs-hash": string;
  merged: string | null;
}

export interface Problem {
  code: string;
  file: string;
  line: number;
  column: number;
  path: string;
  message: string;
  found: string;
  wanted: string;
  text: string;
}

export interface Problems {
  file: string;
  problems: Problem[];
  notes: Problem[];
}

/** A change that was made on the map. Without a new key it changes the site that is there. */
export interface KeptChange {
  site: string;
  "fit-out"?: string;
  latitude?: number;
  longitude?: number;
  "height-metres"?: number;
  "new-key"?: string;
  "new-name"?: string;
}

export type Written = { now: PlanText } | { conflict: Conflict } | { refused: string };

export const token = () => document.querySelector<HTMLMetaElement>("meta[name=form-token]")?.content ?? "";

export function send(path: string, body: unknown, signal?: AbortSignal): Promise<Response> {
  return fetch(`/api/v1/plan/${path}`, {
    method: "POST",
    headers: { "content-type": "application/json", accept: "application/json", RequestVerificationToken: token() },
    body: JSON.stringify(body),
    signal: signal ?? null,
  });
}

/** Writes something; a conflict is an answer, not a fault. Throws only where the server cannot be reached. */
export async function write(path: "save" | "keep" | "undo", body: unknown): Promise<Written> {
  const answer = await send(path, body);
  if (answer.ok) {
    return { now: (await answer.json()) as PlanText };
  }

  const problem = (await answer.json().catch(() => ({}))) as Partial<Conflict> & { detail?: string };
  return answer.status === 409 && problem["theirs-hash"] !== undefined
    ? { conflict: problem as Conflict }
    : { refused: problem.detail ?? `The server answered ${answer.status}.` };
}

let waiting: Conflict | null = null;

/** The conflict that came up while the plan's panel was not open; null when there is none. */
export function takeWaitingConflict(): Conflict | null {
  const taken = waiting;
  waiting = null;
  return taken;
}

let refusal: string | null = null;

/** Why a change from outside the plan's panel was refused while that was not open; null when none was. */
export function takeWaitingRefusal(): string | null {
  const taken = refusal;
  refusal = null;
  return taken;
}

/** Says in the plan's panel why a change was refused, at once or as soon as it is open. */
export function showRefusal(words: string): void {
  refusal = words;
  document.dispatchEvent(new CustomEvent("plan-refused"));
}

/** Writes a change that was asked for outside the plan's panel. True when it stands in the plan; else the panel has to be opened: it shows why, or both versions. */
export async function writeFromOutside(path: "keep" | "undo", body: unknown): Promise<boolean> {
  const written = await write(path, body).catch((fault: Error): Written => ({ refused: `The server cannot be reached; nothing was changed. ${fault.message}` }));
  if ("conflict" in written) {
    showConflict(written.conflict);
  } else if ("refused" in written) {
    showRefusal(written.refused);
  }

  return "now" in written;
}

/** Shows both versions in the plan's panel, at once or as soon as it is open. */
export function showConflict(conflict: Conflict): void {
  waiting = conflict;
  document.dispatchEvent(new CustomEvent<Conflict>("plan-conflict", { detail: conflict }));
}
