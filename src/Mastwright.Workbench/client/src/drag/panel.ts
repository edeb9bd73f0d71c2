// The side while something moves: links with their margins, and the ledger of the selected way, in the clothes of the panel that stands there at rest.
import type { DragAnswer, DragLink, Ledger, Range } from "./answer";
import { escape, signed } from "./strip";

export class LivePanel {
  private readonly element = document.createElement("div");
  private tall = "";
  private shown: string[] = [];

  constructor() {
    this.element.className = "live-panel";
    this.element.setAttribute("aria-hidden", "true");
  }

  hide(): void {
    this.element.remove();
  }

  show(answer: DragAnswer): void {
    const side = document.querySelector<HTMLElement>(".page");
    if (!side) {
      return;
    }

    if (this.element.parentElement !== side) {
      side.append(this.element);
    }

    const height = answer["height-metres"];
    const head = `<h2>${escape(answer.name)}, tried</h2><p class="hint">${answer.latitude.toFixed(5)}, ${answer.longitude.toFixed(5)}${height === null ? "" : ` · antenna ${height.toFixed(1)} m above the ground`}</p>`;
    const ledger = answer.ledger ? title(answer.ledger) : "";
    this.write([head, ...answer.links.map(row)], [ledger, ...(answer.ledger ? lines(answer.ledger) : [])]);
  }

  /** Writes only what is another text than before: most lines of a ledger stay as they are while a station moves. */
  private write(...blocks: string[][]): void {
    const tall = blocks.map((block) => block.length).join();
    if (this.tall !== tall) {
      this.tall = tall;
      this.shown = [];
      this.element.innerHTML =
        `<section><div></div><ul class="rows">${"<li></li>".repeat(blocks[0]!.length - 1)}</ul></section>` +
        `<section class="ledger"><div></div><ol>${"<li></li>".repeat(blocks[1]!.length - 1)}</ol></section>`;
    }

    const places = this.element.querySelectorAll("section > div, li");
    blocks.flat().forEach((text, i) => {
      if (this.shown[i] !== text) {
        this.shown[i] = text;
        places[i]!.innerHTML = text;
      }
    });
  }
}

const row = (link: DragLink) =>
  `<a><span class="dot dot-${link.verdict}"></span><span class="name">${escape(link.name)}</span><span class="what">${link.verdict} · ${(link["distance-metres"] / 1000).toFixed(1)} km</span><span class="number">${margin(link["margin-db"])}</span></a>`;

const whole = (value: number) => (Math.round(value) < 0 ? "−" : "+") + Math.abs(Math.round(value));

const margin = (range: Range | null) => (!range ? "?" : range.high - range.low < 2 ? signed(range.median) : `${whole(range.low)}…${whole(range.high)}`);

const title = (one: Ledger) => `<h3>${escape(one.title)} <b>${signed(one.total)} ${escape(one.unit)}</b></h3>`;

function lines(one: Ledger): string[] {
  let [sum, low, high] = [0, 0, 0];
  for (const line of one.lines) {
    sum += line.value;
    [low, high] = [Math.min(low, sum), Math.max(high, sum)];
  }

  const at = (value: number) => (100 * (value - low)) / Math.max(1, high - low);
  sum = 0;
  return one.lines.map((line) => {
    const before = sum;
    sum += line.value;
    const [left, wide] = [Math.min(at(before), at(sum)), Math.abs(at(sum) - at(before))];
    return `<span class="label">${escape(line.label)}</span><span class="number">${signed(line.value)}</span><span class="track"><span class="zero" style="left:${at(0)}%"></span><span class="step ${line.value < 0 ? "down" : "up"}" style="left:${left}%;width:${wide}%"></span></span>`;
  });
}
