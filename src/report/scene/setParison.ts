// How much of the parison has grown at the die in each row of a continuous screw.
import type { GatheredRow } from "./resourceTrack.ts";

/** Sets `low` and `high` to shares of a full parison; a tail grows on at the pace of its parison. */
export function setParison(rows: readonly GatheredRow[]): void {
  let grown = 1;
  let pace = 0;
  rows.forEach((row, i) => {
    const next = rows[i + 1]?.seconds ?? row.seconds;
    if (row.heldRole === "screw.extrude" && row.isInRun) {
      if (rows[i - 1]?.run !== row.run) pace = 0;
      const share = row.to - row.from;
      if (share > 0 && next > row.seconds) pace = share / (next - row.seconds);
      [row.low, row.high] = [0, 1];
      grown = 1;
    } else {
      row.low = grown;
      if (row.heldRole === "screw.overrun" && row.kind !== "stopped") grown += (next - row.seconds) * pace;
      row.high = grown;
    }
  });
}
