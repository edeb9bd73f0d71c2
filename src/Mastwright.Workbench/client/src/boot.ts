// Starts the page's line to the server, and takes it up again by itself when the server was away: what is shown stands in the page's
// address, so a page that is loaded anew stands as it did.
interface BlazorStart {
  start(options: { circuit: { reconnectionOptions: { maxRetries: number; retryIntervalMilliseconds: number } } }): Promise<void>;
}

// What the page will want as soon as its line stands is fetched meanwhile: the map, where there is one, and the editor of the plan's text.
const wanted = { "./map.js": document.querySelector(".ground"), "./plan.js": new URLSearchParams(location.search).get("panel") === "plan" };
for (const [module, isWanted] of Object.entries(wanted)) {
  if (isWanted) {
    void import(/* @vite-ignore */ module);
  }
}

const everyMilliseconds = 400;
const mostFlushMilliseconds = 2000;

/** Loads the page anew, after what was typed last is in its draft on the disk. */
async function standAgain(): Promise<void> {
  const flush = (globalThis as { mastwrightFlush?: () => Promise<unknown> }).mastwrightFlush;
  await Promise.race([flush?.(), new Promise((done) => setTimeout(done, mostFlushMilliseconds))]);
  location.reload();
}

// Ctrl+Z outside a field takes back the last saved change of the plan.
document.addEventListener("keydown", (event) => {
  const isField = (event.target as Element | null)?.closest("input, textarea, select, [contenteditable=true]");
  if (event.key.toLowerCase() === "z" && (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey && !isField) {
    event.preventDefault();
    document.querySelector<HTMLButtonElement>("button.undo:enabled")?.click();
  }
});

// The first stop of the Tab key leads past the map: the router would take it for another page and leave the focus where it is.
document.addEventListener(
  "click",
  (event) => {
    const target = (event.target as Element | null)?.closest("a.skip")?.getAttribute("href")?.split("#")[1];
    if (target) {
      event.preventDefault();
      event.stopPropagation();
      document.getElementById(target)?.focus();
    }
  },
  true,
);

const blazor = (globalThis as unknown as { Blazor: BlazorStart }).Blazor;

document.addEventListener(
  "components-reconnect-state-changed",
  (event) => {
    const state = (event as CustomEvent<{ state: string }>).detail.state;
    document.documentElement.dataset.line = state;
    if (state === "rejected" || state === "failed") {
      // The server was started anew and knows nothing of this page any more.
      void standAgain();
    }
  },
  true,
);

void blazor.start({ circuit: { reconnectionOptions: { maxRetries: 1_000_000, retryIntervalMilliseconds: everyMilliseconds } } });
