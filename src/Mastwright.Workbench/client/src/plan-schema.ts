// What can stand at a place of the plan, from its JSON Schema: keys with their meaning, and the words or an example of a value.
import type { Completion, CompletionContext, CompletionResult } from "@codemirror/autocomplete";
import type { EditorState } from "@codemirror/state";

export interface Schema {
  description?: string;
  type?: string;
  properties?: Record<string, Schema>;
  patternProperties?: Record<string, Schema>;
  items?: Schema;
  anyOf?: Schema[];
  oneOf?: Schema[];
  enum?: (string | boolean)[];
  examples?: string[];
  required?: string[];
}

/** A step into the plan: a key, or "-" for an item of a list. */
type Step = string;

interface Place {
  path: Step[];
  /** The key whose value the cursor is in; null where a key is being written. */
  valueOf: string | null;
  /** Where the word under the cursor begins, in the document. */
  from: number;
  /** Keys that stand beside. */
  beside: Set<string>;
  indent: number;
  isFlow: boolean;
}

const keyLine = /^(\s*)((?:- +)*)(?:(["']?)([\w-]+)\3\s*:(?:\s|$))?/;

export function completions(schema: () => Schema | null) {
  return (context: CompletionContext): CompletionResult | null => {
    const root = schema();
    const place = root && placeAt(context.state, context.pos);
    if (!root || !place || (!context.explicit && place.valueOf === null && place.from === context.pos)) {
      return null;
    }

    const here = place.path.reduce<Schema[]>((all, step) => all.flatMap((one) => inside(one, step)), [root]).flatMap(alternatives);
    const options = place.valueOf === null ? keys(here, place) : values(here.flatMap((one) => inside(one, place.valueOf!)).flatMap(alternatives));
    return options.length ? { from: place.from, options, validFor: place.valueOf === null ? /^[\w-]*$/ : /^[\w.+-]*$/ } : null;
  };
}

function keys(here: Schema[], place: Place): Completion[] {
  const required = new Set(here.flatMap((one) => one.required ?? []));
  const seen = new Map<string, Completion>();
  for (const [key, schema] of here.flatMap((one) => Object.entries(one.properties ?? {}))) {
    if (!place.beside.has(key) && !seen.has(key)) {
      const kinds = alternatives(schema);
      const isBlock = !place.isFlow && kinds.every((one) => one.type === "object");
      const isList = !place.isFlow && kinds.every((one) => one.type === "array");
      const inner = " ".repeat(place.indent + 2);
      seen.set(key, {
        label: key,
        type: "property",
        detail: required.has(key) ? "required" : "",
        info: schema.description ?? "",
        boost: required.has(key) ? 1 : 0,
        apply: isBlock ? `${key}:\n${inner}` : isList ? `${key}:\n${inner}- ` : `${key}: `,
      });
    }
  }

  return [...seen.values()];
}

function values(here: Schema[]): Completion[] {
  const words = here.flatMap((one) => one.enum ?? []).filter((one) => typeof one === "string");
  const examples = here.flatMap((one) => one.examples ?? []);
  const info = here.find((one) => one.description)?.description ?? "";
  return [
    ...words.map((word) => ({ label: word, type: "enum", info })),
    ...examples.map((example) => ({ label: example, type: "text", detail: "example", info })),
  ];
}

function alternatives(schema: Schema): Schema[] {
  const choices = [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])];
  const description = schema.description;
  return choices.length ? choices.filter((one) => one.type !== "null").flatMap(alternatives).map((one) => (description ? { description, ...one } : one)) : [schema];
}

function inside(schema: Schema, step: Step): Schema[] {
  return alternatives(schema).flatMap((one) =>
    step === "-"
      ? one.items ? [one.items] : []
      : one.properties?.[step]
        ? [one.properties[step]]
        : Object.entries(one.patternProperties ?? {}).filter(([pattern]) => new RegExp(pattern).test(step)).map(([, value]) => value),
  );
}

/** Where the cursor is, from the indents above it and the braces before it on its line. */
export function placeAt(state: EditorState, position: number): Place | null {
  const line = state.doc.lineAt(position);
  const before = line.text.slice(0, position - line.from);
  if (/(^|\s)#/.test(before)) {
    return null;
  }

  const [, blanks = "", dashes = ""] = keyLine.exec(before) ?? [];
  const written = before.slice(blanks.length + dashes.length);
  const indent = blanks.length + dashes.length;
  const path = pathAbove(state, line.number, blanks.length, dashes.length > 0);
  for (let dash = 0; dash < dashes.split("-").length - 1; dash++) {
    path.push("-");
  }

  const beside = dashes ? new Set<string>() : keysBeside(state, line.number, blanks.length);
  const at = (text: string) => position - text.length;
  // The first key of the line, and what stands behind it.
  const first = /^(["']?)([\w-]+)\1\s*:\s+/.exec(written);
  const open = flowAt(first ? written.slice(first[0].length) : written);
  if (open.steps.length) {
    return {
      path: [...path, ...(first ? [first[2]!] : []), ...open.steps.filter((step) => step !== "{")],
      valueOf: open.valueOf,
      from: at(open.word),
      beside: open.beside,
      indent,
      isFlow: true,
    };
  }

  return first
    ? { path, valueOf: first[2]!, from: at(written.slice(first[0].length)), beside, indent, isFlow: false }
    : /^[\w-]*$/.test(written)
      ? { path, valueOf: null, from: at(written), beside, indent, isFlow: false }
      : null;
}

function pathAbove(state: EditorState, lineNumber: number, indent: number, isItem: boolean): Step[] {
  const path: Step[] = [];
  // An item may stand as far in as the key that it belongs to.
  let wanted = isItem ? indent + 1 : indent;
  for (let number = lineNumber - 1; number > 0 && wanted > 0; number--) {
    const text = state.doc.line(number).text;
    const [, blanks = "", dashes = "", , key] = keyLine.exec(text) ?? [];
    if (!text.trim() || text.trimStart().startsWith("#")) {
      continue;
    }

    const column = blanks.length + dashes.length;
    if (key !== undefined && column < wanted) {
      path.unshift(key);
      wanted = column;
    }

    if (dashes && blanks.length < wanted) {
      path.unshift("-");
    }

    if (dashes && blanks.length < indent && column <= wanted) {
      // Keys of one item stand one below the other; what the list belongs to is further out, or just as far.
      wanted = Math.min(wanted, blanks.length + 1);
    }

    if (!dashes && blanks.length < wanted) {
      wanted = blanks.length;
    }
  }

  return path;
}

function keysBeside(state: EditorState, lineNumber: number, indent: number): Set<string> {
  const beside = new Set<string>();
  for (const direction of [-1, 1]) {
    for (let number = lineNumber + direction; number > 0 && number <= state.doc.lines; number += direction) {
      const text = state.doc.line(number).text;
      const [, blanks = "", dashes = "", , key] = keyLine.exec(text) ?? [];
      if (!text.trim() || text.trimStart().startsWith("#")) {
        continue;
      }

      const column = blanks.length + dashes.length;
      if (column === indent && key !== undefined) {
        beside.add(key);
      }

      if (column < indent || (dashes && blanks.length < indent)) {
        break;
      }
    }
  }

  return beside;
}

interface Flow {
  steps: Step[];
  valueOf: string | null;
  word: string;
  beside: Set<string>;
}

/** The braces and brackets that are open at the end of a piece of one line. */
function flowAt(text: string): Flow {
  const stack: { step: Step; key: string | null; beside: Set<string>; hasValue: boolean }[] = [];
  let word = "";
  let quote = "";
  for (const one of text) {
    const top = stack.at(-1);
    if (quote) {
      quote = one === quote ? "" : quote;
      word += one;
    } else if (one === '"' || one === "'") {
      quote = one;
      word += one;
    } else if (one === "{" || one === "[") {
      stack.push({ step: one === "[" ? "-" : "{", key: null, beside: new Set(), hasValue: false });
      word = "";
    } else if (one === "}" || one === "]") {
      stack.pop();
      word = "";
    } else if (top && one === ",") {
      // A comma inside a value such as a position reads as one too; what follows it is then offered as a key, which does no harm.
      top.key = null;
      top.hasValue = false;
      word = "";
    } else if (top && one === ":" && top.step === "{" && !top.hasValue) {
      top.key = word.trim();
      top.beside.add(top.key);
      top.hasValue = true;
      word = "";
    } else {
      word = word || one.trim() ? word + one : "";
    }
  }

  const steps: Step[] = [];
  for (const [index, one] of stack.entries()) {
    steps.push(one.step);
    if (one.key !== null && index < stack.length - 1) {
      steps.push(one.key);
    }
  }

  const last = stack.at(-1);
  return { steps, valueOf: last?.step === "{" ? last.key : null, word, beside: last?.beside ?? new Set() };
}
