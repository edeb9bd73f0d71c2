// The plan's text in an editor: completion from the schema, problems in place, a draft on the disk, saving, and both versions where the
// file was changed meanwhile. It asks the HTTP API by itself, so it goes on while the line of the page is down.
import { autocompletion, closeBrackets, closeBracketsKeymap, completionKeymap } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap, indentLess, insertTab } from "@codemirror/commands";
import { yaml } from "@codemirror/lang-yaml";
import { HighlightStyle, indentUnit, syntaxHighlighting } from "@codemirror/language";
import { type Diagnostic, lintGutter, setDiagnostics } from "@codemirror/lint";
import { MergeView } from "@codemirror/merge";
import { highlightSelectionMatches, search, searchKeymap } from "@codemirror/search";
import { Annotation, EditorState, type Extension } from "@codemirror/state";
import { drawSelection, EditorView, highlightActiveLine, highlightActiveLineGutter, keymap, lineNumbers } from "@codemirror/view";
import { tags } from "@lezer/highlight";
import { ask } from "./api";
import { completions, type Schema } from "./plan-schema";
import { type Conflict, type Draft, type PlanText, type Problem, type Problems, send, takeWaitingConflict, takeWaitingRefusal, write, type Written } from "./write";

const checkAfterMilliseconds = 350;
const draftAfterMilliseconds = 400;
const againAfterMilliseconds = 700;

const fromFile = Annotation.define<boolean>();

const colours = HighlightStyle.define([
  { tag: tags.comment, color: "var(--muted)", fontStyle: "italic" },
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: "var(--choice)" },
  { tag: [tags.string, tags.content], color: "var(--ink)" },
  { tag: [tags.separator, tags.punctuation, tags.squareBracket, tags.brace], color: "var(--muted)" },
]);

const look = EditorView.theme({
  "&": { height: "100%", fontSize: "13px", backgroundColor: "var(--sheet)", color: "var(--ink)" },
  "&.cm-focused": { outline: "none" },
  ".cm-scroller": { fontFamily: "ui-monospace, monospace", lineHeight: "1.55" },
  ".cm-content": { caretColor: "var(--ink)" },
  ".cm-cursor": { borderLeftColor: "var(--ink)" },
  ".cm-gutters": { backgroundColor: "var(--sheet)", color: "var(--muted)", border: "none" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "color-mix(in srgb, var(--wash) 70%, transparent)" },
  "&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "color-mix(in srgb, var(--choice) 28%, transparent)" },
  ".cm-selectionMatch": { backgroundColor: "color-mix(in srgb, var(--choice) 14%, transparent)" },
  ".cm-tooltip": { backgroundColor: "var(--sheet)", color: "var(--ink)", border: "1px solid var(--rule-strong)", borderRadius: "2px", boxShadow: "0 6px 20px rgb(0 0 0 / .16)" },
  ".cm-tooltip-autocomplete > ul > li": { padding: "4px 8px", lineHeight: "1.4" },
  ".cm-tooltip-autocomplete > ul > li[aria-selected]": { backgroundColor: "var(--choice)", color: "var(--sheet)" },
  ".cm-completionInfo": { maxWidth: "34ch", padding: "8px 10px", fontFamily: '"Mastwright Sans", sans-serif' },
  ".cm-completionDetail": { fontStyle: "normal", opacity: "0.75" },
  ".cm-diagnostic": { padding: "6px 10px", fontFamily: '"Mastwright Sans", sans-serif', maxWidth: "60ch", whiteSpace: "pre-wrap" },
  ".cm-diagnostic-error": { borderLeft: "3px solid var(--fails)" },
  ".cm-diagnostic-info": { borderLeft: "3px solid var(--tight)" },
  ".cm-lintRange-error": { backgroundImage: "none", textDecoration: "underline wavy var(--fails) 1.5px", textUnderlineOffset: "3px" },
  ".cm-lintRange-info": { backgroundImage: "none", textDecoration: "underline dotted var(--tight) 2px", textUnderlineOffset: "3px" },
  ".cm-panels": { backgroundColor: "var(--wash)", color: "var(--ink)", borderColor: "var(--rule)" },
  ".cm-button, .cm-textfield": { backgroundImage: "none", backgroundColor: "var(--sheet)", color: "var(--ink)", border: "1px solid var(--rule-strong)", borderRadius: "2px" },
  ".cm-lint-marker": { width: "10px", height: "10px", content: "none", alignSelf: "center", margin: "5px auto 0" },
  ".cm-lint-marker-error": { content: "none", backgroundColor: "var(--fails)" },
  ".cm-lint-marker-info": { content: "none", backgroundColor: "var(--tight)", borderRadius: "50%" },
  ".cm-changedLineGutter, &.cm-merge-a .cm-changedLineGutter, &.cm-merge-b .cm-changedLineGutter": { background: "var(--choice) !important" },
  ".cm-collapsedLines": { background: "var(--wash)", color: "var(--muted)", padding: "4px 10px" },
  ".cm-collapsedLines:before, .cm-collapsedLines:after": { content: '"…"' },
  ".cm-changedLine": { backgroundColor: "color-mix(in srgb, var(--choice) 12%, transparent) !important" },
  ".cm-changedText": { background: "color-mix(in srgb, var(--choice) 30%, transparent) !important" },
});

/** Text with its own line ends throughout, so that what was not touched is written back byte for byte. */
const lineEnd = (text: string) => (text.includes("\r\n") && !/(^|[^\r])\n/.test(text) ? "\r\n" : "\n");

const when = (time: string) => new Date(time).toLocaleString([], { weekday: "short", hour: "2-digit", minute: "2-digit" });

/** The panel with the editor. Blazor opens it, tells it that the file was read again, and closes it. */
export class PlanEditor {
  private view: EditorView | null = null;
  private base: { hash: string; text: string } | null = null;
  private schema: Schema | null = null;
  private problems: Problem[] = [];
  private checking: AbortController | null = null;
  private checkTimer = 0;
  private draftTimer = 0;
  private draftWanted: string | null = null;
  private draftWriting: Promise<void> | null = null;
  private merge: MergeView | null = null;
  private readonly gone = new AbortController();
  private draftId = "";
  private readonly parts: Record<"status" | "save" | "revert" | "editor" | "problems" | "conflict" | "drafts", HTMLElement>;

  constructor(private readonly host: HTMLElement) {
    this.parts = this.build();
    document.addEventListener("plan-conflict", (event) => this.showConflict((event as CustomEvent<Conflict>).detail), { signal: this.gone.signal });
    document.addEventListener("plan-refused", () => this.sayRefusal(), { signal: this.gone.signal });
    window.addEventListener("pagehide", () => void this.flush(), { signal: this.gone.signal });
    flushes.add(this.flushOnce);
    void this.start();
  }

  /** The file was read again: takes its text, or says that it is another where there are unsaved edits. */
  async reload(): Promise<void> {
    const now = await ask<PlanText>("plan/text").catch(() => null);
    if (!now || !this.view || !this.base || now.hash === this.base.hash) {
      return;
    }

    if (!this.isDirty || this.text === now.text) {
      this.take(now, "The file was changed; this is its text now.");
    } else {
      this.say("The file was changed meanwhile. Your text is kept; saving shows both.", "tight");
    }
  }

  dispose(): void {
    void this.flush();
    flushes.delete(this.flushOnce);
    this.gone.abort();
    clearTimeout(this.checkTimer);
    this.merge?.destroy();
    this.view?.destroy();
    this.host.replaceChildren();
  }

  private readonly flushOnce = () => this.flush();

  private get text(): string {
    return this.view!.state.sliceDoc();
  }

  private get isDirty(): boolean {
    return this.view !== null && this.base !== null && this.text !== this.base.text;
  }

  private build() {
    const make = <K extends keyof HTMLElementTagNameMap>(tag: K, name: string, text = "") => Object.assign(document.createElement(tag), { className: name, textContent: text });
    const bar = make("div", "plan-bar");
    const save = make("button", "plan-save", "Save");
    save.type = "button";
    save.title = "Ctrl+S";
    save.addEventListener("click", () => void this.save());
    const revert = make("button", "plan-revert", "Drop edits");
    revert.type = "button";
    revert.addEventListener("click", () => void this.revert());
    const status = make("p", "plan-status");
    status.setAttribute("role", "status");
    bar.append(save, revert, status);
    const drafts = make("div", "plan-drafts");
    const editor = make("div", "plan-text");
    const conflict = make("section", "plan-conflict");
    conflict.hidden = true;
    conflict.setAttribute("aria-label", "Two versions of the plan");
    const problems = make("section", "plan-problems");
    problems.setAttribute("aria-label", "Problems of the text");
    this.host.replaceChildren(bar, drafts, editor, conflict, problems);
    return { status, save, revert, editor, problems, conflict, drafts };
  }

  private async start(): Promise<void> {
    this.draftId = await ownDraftId();
    const now = await this.stubborn(() => ask<PlanText>("plan/text"));
    if (!now) {
      return;
    }

    const own = now.drafts.find((draft) => draft.id === this.draftId);
    this.base = own ? { hash: own["based-on"], text: own["based-on"] === now.hash ? now.text : "" } : now;
    this.view = new EditorView({ parent: this.parts.editor, state: this.state(own?.text ?? now.text) });
    this.host.dataset.ready = "true";
    this.offer(now.drafts.filter((draft) => draft.id !== this.draftId));
    if (own) {
      this.say(own["based-on"] === now.hash ? `Your unsaved text of ${when(own.time)} stands here again.` : `Your unsaved text of ${when(own.time)} stands here again; the file was changed since. Saving shows both.`, "tight");
    } else {
      this.say("");
    }

    this.check(0);
    const waiting = takeWaitingConflict();
    if (waiting) {
      this.showConflict(waiting);
    }

    this.sayRefusal();
    void ask<Schema>("plan/schema").then((schema) => (this.schema = schema)).catch((fault) => console.warn(fault));
  }

  private state(text: string): EditorState {
    return EditorState.create({
      doc: text,
      extensions: [
        ...reading(text),
        history(),
        EditorView.contentAttributes.of({ "aria-label": "Text of the plan, YAML. Escape, then Tab, leaves it. F8 goes to the next problem.", tabindex: "0", spellcheck: "false", autocorrect: "off", autocapitalize: "off" }),
        highlightActiveLine(),
        highlightActiveLineGutter(),
        highlightSelectionMatches(),
        closeBrackets(),
        lintGutter(),
        search({ top: true }),
        indentUnit.of("  "),
        EditorView.scrollMargins.of(() => ({ top: 24, bottom: 64 })),
        autocompletion({ override: [completions(() => this.schema)], icons: false, activateOnTyping: true }),
        keymap.of([
          { key: "Mod-s", preventDefault: true, run: () => (void this.save(), true) },
          { key: "F8", run: () => this.goToProblem(1) },
          { key: "Shift-F8", run: () => this.goToProblem(-1) },
          { key: "Tab", run: insertTab, shift: indentLess },
          ...closeBracketsKeymap,
          ...completionKeymap,
          ...searchKeymap,
          ...historyKeymap,
          ...defaultKeymap,
        ]),
        EditorView.updateListener.of((update) => {
          if (update.docChanged) {
            this.check(checkAfterMilliseconds);
            if (!update.transactions.some((one) => one.annotation(fromFile))) {
              this.edited();
            }
          }
        }),
      ],
    });
  }

  private edited(): void {
    this.say(this.isDirty ? "Not saved; a draft is kept." : "");
    this.draftWanted = this.text;
    if (!this.draftTimer) {
      this.draftTimer = window.setTimeout(() => void this.flush(), draftAfterMilliseconds);
    }
  }

  /** Has the draft written now; done when it is on the disk, or after a few tries. */
  private async flush(): Promise<void> {
    clearTimeout(this.draftTimer);
    this.draftTimer = 0;
    await this.draftWriting;
    if (this.draftWanted === null || !this.base) {
      return;
    }

    const text = this.draftWanted;
    this.draftWriting = send("draft", { id: this.draftId, "based-on": this.base.hash, text })
      .then((answer) => {
        if (answer.ok && this.draftWanted === text) {
          this.draftWanted = null;
          this.host.dataset.kept = String(text.length);
        }
      })
      .catch(() => undefined);
    await this.draftWriting;
    this.draftWriting = null;
    if (this.draftWanted !== null && !this.gone.signal.aborted && !this.draftTimer) {
      // The server is away or slow: the text is still here, and is sent again.
      this.draftTimer = window.setTimeout(() => void this.flush(), againAfterMilliseconds);
    }
  }

  private async dropDraft(id = this.draftId): Promise<void> {
    if (id === this.draftId) {
      clearTimeout(this.draftTimer);
      this.draftTimer = 0;
      this.draftWanted = null;
      await this.draftWriting;
    }

    await send("draft", { id }).catch(() => undefined);
  }

  private async save(): Promise<void> {
    if (!this.view || !this.base) {
      return;
    }

    const text = this.text;
    await this.write(text, this.base.hash);
  }

  private async write(text: string, basedOn: string): Promise<void> {
    this.say("Saving …");
    const written: Written = await write("save", { text, "based-on": basedOn, "with-problems": this.parts.save.dataset.problems !== undefined || text !== this.text }).catch((fault: Error) => ({
      refused: `The server cannot be reached; your text is kept here. ${fault.message}`,
    }));
    if ("now" in written) {
      this.closeConflict();
      if (text === this.text) {
        this.base = written.now;
        await this.dropDraft();
      } else {
        this.take(written.now, "");
      }

      this.say("Saved.", "ok");
    } else if ("conflict" in written) {
      this.showConflict(written.conflict);
    } else {
      this.say(written.refused.split("\n")[0] ?? "", "fails");
      this.check(0);
    }
  }

  private async revert(): Promise<void> {
    const now = await ask<PlanText>("plan/text").catch(() => null);
    if (now) {
      await this.putAside();
      this.take(now, "This is the file's text; yours is kept as a draft below.");
      this.offer((await ask<PlanText>("plan/text").catch(() => now)).drafts.filter((draft) => draft.id !== this.draftId));
    }
  }

  /** Keeps the text as a draft of another name, so that nothing that was typed is lost by a choice. */
  private async putAside(text = this.text): Promise<void> {
    await send("draft", { id: freshId(), "based-on": this.base?.hash ?? "", text }).catch(() => undefined);
  }

  private take(now: { hash: string; text: string }, status: string): void {
    const view = this.view!;
    this.base = now;
    const head = Math.min(view.state.selection.main.head, now.text.length);
    if (lineEnd(now.text) !== view.state.lineBreak) {
      view.setState(this.state(now.text));
    } else {
      // Only what differs is replaced, so that the cursor and the place on the screen stay.
      const [old, fresh] = [view.state.doc, view.state.toText(now.text)];
      const [a, b] = [old.toString(), fresh.toString()];
      let start = 0;
      while (start < a.length && start < b.length && a[start] === b[start]) {
        start++;
      }

      let end = 0;
      while (end < a.length - start && end < b.length - start && a[a.length - 1 - end] === b[b.length - 1 - end]) {
        end++;
      }

      view.dispatch({ changes: { from: start, to: a.length - end, insert: fresh.slice(start, b.length - end) }, annotations: fromFile.of(true) });
    }

    view.dispatch({ selection: { anchor: Math.min(head, view.state.doc.length) } });
    void this.dropDraft();
    this.say(status);
    this.check(0);
  }

  private offer(drafts: Draft[]): void {
    this.parts.drafts.replaceChildren(
      ...drafts.slice(0, 3).map((draft) => {
        const row = document.createElement("p");
        row.append(`An unsaved text of ${when(draft.time)} is kept. `);
        row.append(
          button("Take it up", async () => {
            if (this.isDirty) {
              await this.putAside();
            }

            const now = await ask<PlanText>("plan/text");
            this.base = { hash: draft["based-on"], text: draft["based-on"] === now.hash ? now.text : "" };
            this.view!.setState(this.state(draft.text));
            this.edited();
            this.check(0);
            await this.flush();
            await this.dropDraft(draft.id);
            row.remove();
          }),
          button("Drop it", async () => {
            await this.dropDraft(draft.id);
            row.remove();
          }),
        );
        return row;
      }),
    );
  }

  private check(afterMilliseconds: number): void {
    clearTimeout(this.checkTimer);
    this.checkTimer = window.setTimeout(async () => {
      this.checking?.abort();
      const stop = (this.checking = new AbortController());
      const text = this.text;
      try {
        const answer = await send("check", { text }, stop.signal);
        if (answer.ok) {
          const found = (await answer.json()) as Problems;
          if (this.view && text === this.text) {
            this.tell(found);
          }
        }
      } catch {
        // The server is away, or a newer check is under way.
      }
    }, afterMilliseconds);
  }

  private tell(found: Problems): void {
    const { doc } = this.view!.state;
    this.problems = found.problems;
    const mark = (problem: Problem, severity: Diagnostic["severity"]): Diagnostic | null => {
      if (problem.file !== found.file || problem.line < 1 || problem.line > doc.lines) {
        return null;
      }

      const line = doc.line(problem.line);
      const from = Math.min(line.from + Math.max(problem.column - 1, 0), line.to);
      const word = /^(["']?)[^\s#,{}[\]:]*\1/.exec(doc.sliceString(from, line.to))?.[0].length ?? 0;
      const to = problem.found && doc.sliceString(from, from + problem.found.length) === problem.found ? from + problem.found.length : from + Math.max(word, 1);
      return { from, to: Math.min(to, doc.length), severity, message: words(problem) };
    };
    const marks = [...found.problems.map((one) => mark(one, "error")), ...found.notes.map((one) => mark(one, "info"))].filter((one) => one !== null);
    marks.sort((one, other) => one.from - other.from);
    this.view!.dispatch(setDiagnostics(this.view!.state, marks));
    this.host.dataset.problems = String(found.problems.length);
    const count = found.problems.length;
    this.label();

    const heading = document.createElement("h2");
    heading.textContent = count ? `${count} problem${count === 1 ? "" : "s"}` : "No problem found";
    heading.setAttribute("role", "status");
    const list = document.createElement("ol");
    for (const problem of found.problems) {
      const item = document.createElement("li");
      const place = problem.file === found.file ? (problem.line ? `${problem.line}:${problem.column}` : "whole file") : `${problem.file}:${problem.line}`;
      const one = button("", () => this.goTo(problem));
      const where = document.createElement("b");
      where.textContent = place;
      one.append(where, ` ${problem.path ? problem.path + ": " : ""}${words(problem)}`);
      item.append(one);
      list.append(item);
    }

    this.parts.problems.replaceChildren(heading, ...(count ? [list] : []));
  }

  private goTo(problem: Problem): void {
    const view = this.view!;
    if (problem.line >= 1 && problem.line <= view.state.doc.lines) {
      const line = view.state.doc.line(problem.line);
      const at = Math.min(line.from + Math.max(problem.column - 1, 0), line.to);
      view.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: "center" }) });
      view.focus();
      this.say(words(problem), "fails");
    }
  }

  private goToProblem(step: 1 | -1): boolean {
    const own = this.problems.filter((one) => one.line > 0);
    if (own.length) {
      const { head } = this.view!.state.selection.main;
      const at = (one: Problem) => this.view!.state.doc.line(Math.min(one.line, this.view!.state.doc.lines)).from + Math.max(one.column - 1, 0);
      const next = step > 0 ? (own.find((one) => at(one) > head) ?? own[0]!) : (own.findLast((one) => at(one) < head) ?? own.at(-1)!);
      this.goTo(next);
    }

    return true;
  }

  private showConflict(conflict: Conflict): void {
    if (!this.view) {
      return;
    }

    takeWaitingConflict();
    const box = this.parts.conflict;
    this.closeConflict();
    const heading = document.createElement("h2");
    heading.textContent = "The file was changed meanwhile";
    heading.tabIndex = -1;
    const text = document.createElement("p");
    text.textContent = `Nothing was written yet. Both versions stand below, and neither is lost by a choice: the file's stays to be undone to, yours stays as a draft.`;
    const choices = document.createElement("div");
    choices.className = "plan-choices";
    if (conflict.merged !== null) {
      choices.append(button("Save both changes together", () => this.write(conflict.merged!, conflict["theirs-hash"])));
    } else {
      text.textContent += " Both touch the same lines, so they cannot be put together here.";
    }

    choices.append(
      button("Save yours over it", () => this.write(conflict.yours, conflict["theirs-hash"])),
      button("Keep the file's", async () => {
        await this.putAside(conflict.yours);
        this.closeConflict();
        this.take({ hash: conflict["theirs-hash"], text: conflict.theirs }, "This is the file's text; yours is kept as a draft.");
        this.offer((await ask<PlanText>("plan/text")).drafts.filter((draft) => draft.id !== this.draftId));
      }),
      button("Back to the text", () => this.closeConflict()),
    );
    const names = document.createElement("div");
    names.className = "plan-sides";
    names.innerHTML = "<b>The file as it is</b><b>Yours</b>";
    const sides = document.createElement("div");
    sides.className = "plan-versions";
    box.replaceChildren(heading, text, choices, names, sides);
    box.hidden = false;
    this.parts.editor.hidden = true;
    this.host.dataset.conflict = "true";
    const side = (doc: string, label: string) => ({ doc, extensions: [...reading(doc), EditorState.readOnly.of(true), EditorView.contentAttributes.of({ "aria-label": label })] });
    this.merge = new MergeView({
      a: side(conflict.theirs, "The file as it is, read only"),
      b: side(conflict.yours, "Your text, read only"),
      parent: sides,
      collapseUnchanged: { margin: 3, minSize: 6 },
    });
    this.say("Two versions: choose.", "tight");
    heading.focus();
  }

  private sayRefusal(): void {
    const words = this.view ? takeWaitingRefusal() : null;
    if (words) {
      this.say(words.split("\n")[0]!, "fails");
    }
  }

  private closeConflict(): void {
    this.merge?.destroy();
    this.merge = null;
    this.parts.conflict.hidden = true;
    this.parts.conflict.replaceChildren();
    this.parts.editor.hidden = false;
    delete this.host.dataset.conflict;
  }

  private say(text: string, verdict = ""): void {
    this.parts.status.textContent = text;
    this.parts.status.dataset.verdict = verdict;
    this.host.dataset.dirty = String(this.isDirty);
    this.parts.save.toggleAttribute("disabled", !this.isDirty);
    this.label();
    this.parts.revert.toggleAttribute("hidden", !this.isDirty);
  }

  /** What saving would do now: with problems it says so first. */
  private label(): void {
    const count = this.isDirty ? this.problems.length : 0;
    this.parts.save.textContent = count ? `Save with ${count} problem${count === 1 ? "" : "s"}` : "Save";
    this.parts.save.toggleAttribute("data-problems", count > 0);
  }

  /** Asks again until it is answered: the panel may open while the server is away. */
  private async stubborn<T>(question: () => Promise<T>): Promise<T | null> {
    while (!this.gone.signal.aborted) {
      try {
        return await question();
      } catch (fault) {
        this.say((fault as Error).message, "fails");
        await new Promise((done) => setTimeout(done, againAfterMilliseconds));
      }
    }

    return null;
  }
}

const reading = (text: string): Extension[] => [
  EditorState.lineSeparator.of(lineEnd(text)),
  lineNumbers(),
  drawSelection(),
  EditorView.lineWrapping,
  yaml(),
  syntaxHighlighting(colours),
  look,
];

function words(problem: Problem): string {
  const found = problem.found && !problem.message.includes(`'${problem.found}'`) ? ` Found '${problem.found}'.` : "";
  return `${problem.message}${found}${problem.wanted ? ` Right would be: ${problem.wanted}.` : ""}`;
}

function button(text: string, act: () => unknown): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", () => void act());
  return made;
}

const freshId = () => Array.from(crypto.getRandomValues(new Uint8Array(12)), (one) => one.toString(16).padStart(2, "0")).join("");

const draftKey = "plan-draft";

/** How long a tab that is loaded anew waits for itself to let go of its draft. */
const lockMilliseconds = 800;

/** The draft of this tab: it outlives a reload. A tab that was copied from another takes one of its own. */
const ownDraftId = once(async () => {
  const id = sessionStorage.getItem(draftKey);
  const mine = id !== null && (await holds(id)) ? id : freshId();
  if (mine !== id) {
    await holds(mine);
    sessionStorage.setItem(draftKey, mine);
  }

  return mine;
});

/** Holds a draft for this tab as long as the page lives; false where another tab does. Where the browser has no locks (only over a plain line) it is taken as held. */
function holds(id: string): Promise<boolean> {
  return new Promise((told) => {
    const wait = AbortSignal.timeout(lockMilliseconds);
    const held = navigator.locks?.request(`plan-draft-${id}`, { signal: wait }, () => {
      told(true);
      return new Promise(() => undefined);
    });
    held?.catch(() => told(false));
    if (!held) {
      told(true);
    }
  });
}

function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null;
  return () => (made ??= make());
}

const flushes: Set<() => Promise<void>> = new Set();
(globalThis as { mastwrightFlush?: () => Promise<unknown> }).mastwrightFlush = () => Promise.all([...flushes].map((one) => one()));

export const open = (host: HTMLElement) => new PlanEditor(host);
