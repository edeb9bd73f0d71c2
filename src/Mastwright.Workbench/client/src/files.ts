// Files that are dropped on a page, or chosen: they go to the server as they are, one after the other, with the word that came with the page.
import { token } from "./write";

interface Listener {
  invokeMethodAsync(method: "Sent", id: string, name: string): Promise<void>;
  invokeMethodAsync(method: "Refused", words: string): Promise<void>;
  invokeMethodAsync(method: "Sending", name: string): Promise<void>;
}

async function send(file: File, listener: Listener): Promise<void> {
  await listener.invokeMethodAsync("Sending", file.name);
  try {
    const answer = await fetch(`/api/v1/files?name=${encodeURIComponent(file.name)}`, {
      method: "POST",
      headers: { "content-type": "application/octet-stream", accept: "application/json", RequestVerificationToken: token() },
      body: file,
    });
    const said = (await answer.json().catch(() => ({}))) as { id?: string; detail?: string };
    if (answer.ok && said.id !== undefined) {
      await listener.invokeMethodAsync("Sent", said.id, file.name);
    } else {
      await listener.invokeMethodAsync("Refused", `${file.name}: ${said.detail ?? `the server answered ${answer.status}`}`);
    }
  } catch (fault) {
    await listener.invokeMethodAsync("Refused", `${file.name}: it could not be sent: ${(fault as Error).message}`);
  }
}

/** Takes files that are dropped on an element, or chosen in the input within it. */
export function take(place: HTMLElement, listener: Listener): { dispose(): void } {
  const ending = new AbortController();
  const { signal } = ending;
  const input = place.querySelector<HTMLInputElement>("input[type=file]")!;
  const all = async (files: File[]) => {
    for (const file of files) {
      await send(file, listener);
    }
  };

  const chosen = () => {
    const files = [...(input.files ?? [])];
    input.value = "";
    void all(files);
  };
  input.addEventListener("change", chosen, { signal });
  if (input.files?.length) {
    // Chosen before this was here.
    chosen();
  }

  place.addEventListener(
    "dragover",
    (event) => {
      event.preventDefault();
      place.dataset.over = "true";
    },
    { signal },
  );
  place.addEventListener("dragleave", () => delete place.dataset.over, { signal });
  place.addEventListener(
    "drop",
    (event) => {
      event.preventDefault();
      delete place.dataset.over;
      void all([...(event.dataTransfer?.files ?? [])]);
    },
    { signal },
  );
  return { dispose: () => ending.abort() };
}
