// Starts the page's line to the server, and takes it up again by itself when the server was away: what is shown stands in the page's
// address, so a page that is loaded anew stands as it did.
interface BlazorStart {
  start(options: { circuit: { reconnectionOptions: { maxRetries: number; retryIntervalMilliseconds: number } } }): Promise<void>;
}

// The map's module is wanted as soon as the line stands: it is fetched meanwhile.
const map = "./map.js";
void import(/* @vite-ignore */ map);

const everyMilliseconds = 700;
const blazor = (globalThis as unknown as { Blazor: BlazorStart }).Blazor;

document.addEventListener(
  "components-reconnect-state-changed",
  (event) => {
    const state = (event as CustomEvent<{ state: string }>).detail.state;
    document.documentElement.dataset.line = state;
    if (state === "rejected" || state === "failed") {
      // The server was started anew and knows nothing of this page any more.
      location.reload();
    }
  },
  true,
);

void blazor.start({ circuit: { reconnectionOptions: { maxRetries: 1_000_000, retryIntervalMilliseconds: everyMilliseconds } } });
