// How far a step has come at the beginning and at the end of each row, where stops may hold it in between.
import type { StepRole } from "#cell/words/stepNames.ts";
import type { GatheredRow } from "./resourceTrack.ts";

/** Mean seconds of steps that a stop can break off: nothing else says how long such a step would have lasted. */
export type MeanTimes = Readonly<Partial<Record<StepRole, number>>>;

/** Sets `from` and `to` of every row; both are 0 where the end of the step is not known. */
export function setProgress(rows: readonly GatheredRow[], means: MeanTimes): void {
  for (let first = 0; first < rows.length;) {
    let beyond = first + 1;
    while (beyond < rows.length && rows[beyond]!.run === rows[first]!.run) beyond++;
    setOne(rows, { first, beyond }, means);
    first = beyond;
  }
}

function setOne(
  rows: readonly GatheredRow[],
  { first, beyond }: { readonly first: number; readonly beyond: number },
  means: MeanTimes,
): void {
  const lengths: number[] = [];
  for (let i = first; i < beyond; i++) lengths.push((rows[i + 1]?.seconds ?? NaN) - rows[i]!.seconds);
  const isHeld = (row: GatheredRow): boolean => row.kind === "stopped" && row.isInRun;
  const parts = lengths.map((length, i) => (isHeld(rows[first + i]!) ? 0 : length));
  const total = parts.reduce((sum, part) => sum + part, 0);
  let passed = 0;
  for (let i = first; i < beyond; i++) {
    const row = rows[i]!;
    const before = passed;
    passed += parts[i - first]!;
    const whole = isBrokenOff(rows, beyond, row) ? Math.max(total, means[row.heldRole!] ?? total) : total;
    // NaN: it goes on beyond the end of the record.
    row.from = whole > 0 ? before / whole : 0;
    row.to = whole > 0 ? passed / whole : isHeld(row) ? 0 : 1;
    if (Number.isNaN(whole)) row.from = row.to = 0;
  }
}

/** A shot that was lost in this step is cleared away next. */
function isBrokenOff(rows: readonly GatheredRow[], beyond: number, { heldRole }: GatheredRow): boolean {
  if (heldRole !== "mold.drop" && heldRole !== "mold.close") return false;
  const next = rows.slice(beyond, beyond + 4).find(({ kind }) => kind === "working");
  return next?.role === "mold.clear";
}
