// Changes of the plan that are asked for outside its text: the last one taken back, and a trial of the map kept. False where there is something to
// look at in the plan's panel.
import { type KeptChange, writeFromOutside } from "./write";

export const keepChange = (change: KeptChange, basedOn: string) => writeFromOutside("keep", { ...change, "based-on": basedOn });

export const undo = (basedOn: string) => writeFromOutside("undo", { "based-on": basedOn });
