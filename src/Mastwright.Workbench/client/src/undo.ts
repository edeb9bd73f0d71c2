// Takes back the last saved change of the plan.
import { showConflict, write } from "./write";

/** True when it was taken back; false where there is something to look at in the plan's panel. */
export async function undo(basedOn: string): Promise<boolean> {
  const written = await write("undo", { "based-on": basedOn });
  if ("conflict" in written) {
    showConflict(written.conflict);
    return false;
  }

  return true;
}
