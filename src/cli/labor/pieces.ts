// Work cut into pieces for worker threads, the longest first, so that no thread is left with a long one at the end.

export interface Piece<W> {
  /** The place of the work that it is a part of, and of its first task in it. */
  readonly of: number;
  readonly from: number;
  readonly work: W;
  /** Seconds, about. */
  readonly effort: number;
}

/** Tasks a message: below this number of tasks each goes alone. */
const fewTasks = 100;
const mostTasksAPiece = 50;
/** Pieces that each thread gets at least. */
const piecesAJob = 8;

/** `done`: tasks of all works, in their order, that are not to be cut out any more. */
export function longestFirst<W extends { readonly tasks: readonly unknown[] }>(
  works: readonly W[],
  done: number,
  jobs: number,
  effortOf: (work: W) => number,
): readonly Piece<W>[] {
  const count = works.reduce((sum, { tasks }) => sum + tasks.length, 0) - done;
  const size = count < fewTasks ? 1 : Math.min(mostTasksAPiece, Math.ceil(count / (piecesAJob * jobs)));
  let before = 0;
  const pieces = works.flatMap((work, of) => {
    const first = Math.min(work.tasks.length, Math.max(0, done - before));
    before += work.tasks.length;
    const begins = Array.from({ length: Math.ceil((work.tasks.length - first) / size) }, (_, i) => first + i * size);
    return begins.map((from): Piece<W> => {
      const piece = { ...work, tasks: work.tasks.slice(from, from + size) };
      return { of, from, work: piece, effort: effortOf(piece) };
    });
  });
  return pieces.toSorted((one, other) => other.effort - one.effort);
}
