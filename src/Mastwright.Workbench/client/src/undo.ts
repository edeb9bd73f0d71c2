// Changes of the plan that are asked for outside its text: the last one taken back, and a trial of the map kept.
import { keep, type KeptChange, showConflict, write } from "./write";

/** True when the change stands in the plan; false where there is something to look at in the plan's panel. */
export const keepChange = async (change: KeptChange, basedOn: string) => "now" in (await keep(change, basedOn));

/** True when it was taken back; false where there is something to look at in the plan's panel. */
export async function undo(basedOn: string): Promise<boolean> {
  const written = await write("undo", { "based-on": basedOn });
  if ("conflict" in written) {
    showConflict(written.conflict);
    return false;
  }

  return true;
}
