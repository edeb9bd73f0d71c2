// Two periods on a timeline, changed by dragging: an edge moves alone, the middle moves the whole, and days are whole. The page keeps them in its
// address; by keyboard they are the fields below.

interface Listener {
  invokeMethodAsync(method: "Dragged", before: string, after: string): Promise<void>;
}

type Edge = "from" | "to" | "whole";
type Name = "before" | "after";

interface Hold {
  name: Name;
  edge: Edge;
  day: number;
  from: number;
  to: number;
}

const grabPixels = 14;
const dayMilliseconds = 86_400_000;

/** Follows the pointer on a timeline. */
export function follow(svg: SVGSVGElement, listener: Listener): { dispose(): void } {
  let hold: Hold | null = null;
  const ending = new AbortController();
  const { signal } = ending;
  const band = (name: Name) => svg.querySelector<SVGGElement>(`.band-${name}`);
  const number = (name: string) => Number(svg.dataset[name]);

  const dayAt = (event: PointerEvent) => {
    const box = svg.getBoundingClientRect();
    return number("first") + ((event.clientX - box.left) / box.width) * number("days");
  };

  const edgesOf = (name: Name) => {
    const place = band(name)!.dataset;
    return { from: Number(place.from), to: Number(place.to) };
  };

  const show = (name: Name, from: number, to: number) => {
    const group = band(name)!;
    group.dataset.from = String(from);
    group.dataset.to = String(to);
    const width = svg.viewBox.baseVal.width;
    const x = (day: number) => ((day - number("first")) / number("days")) * width;
    const rect = group.querySelector("rect")!;
    rect.setAttribute("x", String(x(from)));
    rect.setAttribute("width", String(Math.max(1, x(to) - x(from))));
    const edges = group.querySelectorAll("line");
    [from, to].forEach((day, place) => {
      edges[place]!.setAttribute("x1", String(x(day)));
      edges[place]!.setAttribute("x2", String(x(day)));
    });
    const words = svg.parentElement!.querySelector<HTMLElement>(`[data-band=${name}]`)!;
    words.style.left = `${(100 * (x(from) + x(to))) / 2 / width}%`;
  };

  const take = (event: PointerEvent): Hold | null => {
    const day = dayAt(event);
    const reach = (grabPixels / svg.getBoundingClientRect().width) * number("days");
    const near = (["before", "after"] as const)
      .filter(band)
      .flatMap((name) => {
        const { from, to } = edgesOf(name);
        return [
          { name, edge: "from" as Edge, off: Math.abs(day - from) },
          { name, edge: "to" as Edge, off: Math.abs(day - to) },
          { name, edge: "whole" as Edge, off: day > from && day < to ? reach * 0.999 : Infinity },
        ];
      })
      .filter((one) => one.off < reach)
      .sort((one, other) => one.off - other.off)[0];
    return near ? { name: near.name, edge: near.edge, day, ...edgesOf(near.name) } : null;
  };

  const move = (event: PointerEvent) => {
    if (!hold) {
      return;
    }

    const steps = Math.round(dayAt(event) - hold.day);
    const first = number("first");
    const last = first + number("days");
    const { name } = hold;
    let { from, to } = hold;
    if (hold.edge === "whole") {
      const kept = Math.min(Math.max(steps, first - from), last - to);
      [from, to] = [from + kept, to + kept];
    } else if (hold.edge === "from") {
      from = Math.min(Math.max(from + steps, first), to - 1);
    } else {
      to = Math.max(Math.min(to + steps, last), from + 1);
    }

    // The period before ends before the one after begins.
    const other = edgesOf(name === "before" ? "after" : "before");
    if (name === "before") {
      to = Math.min(to, other.from);
      from = Math.min(from, to - 1);
    } else {
      from = Math.max(from, other.to);
      to = Math.max(to, from + 1);
    }

    show(name, from, to);
  };

  const text = (name: Name) => {
    const { from, to } = edgesOf(name);
    const day = (value: number) => new Date(value * dayMilliseconds).toISOString().slice(0, 10);
    return `${day(from)}..${day(to)}`;
  };

  svg.addEventListener(
    "pointerdown",
    (event) => {
      hold = take(event);
      if (hold) {
        event.preventDefault();
        svg.setPointerCapture(event.pointerId);
        svg.dataset.held = hold.edge;
      }
    },
    { signal },
  );
  svg.addEventListener("pointermove", move, { signal });
  svg.addEventListener(
    "pointerup",
    () => {
      if (hold) {
        hold = null;
        delete svg.dataset.held;
        void listener.invokeMethodAsync("Dragged", text("before"), text("after"));
      }
    },
    { signal },
  );
  svg.addEventListener("pointercancel", () => (hold = null), { signal });
  svg.dataset.followed = "yes";
  return { dispose: () => ending.abort() };
}
