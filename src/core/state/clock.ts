// The present tick.

export let now: f64 = 0;

export function setClock(tick: f64): void {
  now = tick;
}
