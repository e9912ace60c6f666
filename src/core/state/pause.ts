// Whether the loop is to pause before the next instant: the chain has grown long, or the host should take what was written down.

export let isDue = false;

/** To be asked for where something is written: the loop then has one question to ask instead of one to each who writes. */
export function pauseSoon(): void {
  isDue = true;
}

export function goOn(): void {
  isDue = false;
}
