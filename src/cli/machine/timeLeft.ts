// The time that work still takes, from the share that is done.

/** With less done the rest is not known. */
const leastKnown = 0.02;

/** Seconds; undefined where too little is done. All parts of the work are taken to last alike. */
export function secondsLeft(share: number, elapsed: number): number | undefined {
  return share < leastKnown ? undefined : (elapsed * (1 - Math.min(1, share))) / share;
}

/** "estimating the time left", "40 s left", "12 min left", "1.5 h left". */
export function timeLeft(share: number, elapsed: number): string {
  const left = secondsLeft(share, elapsed);
  return left === undefined ? "estimating the time left" : `${aboutTime(left)} left`;
}

/** No more digits than are known. */
export function aboutTime(seconds: number): string {
  if (seconds < 100) return `${Math.ceil(seconds)} s`;
  const minutes = seconds / 60;
  return minutes < 100 ? `${Math.round(minutes)} min` : `${(minutes / 60).toPrecision(2)} h`;
}
