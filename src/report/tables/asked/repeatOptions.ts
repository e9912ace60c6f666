// The options that repeat a change of an order.

/** Those that make the change and its runs, after those of the call. */
export function repeatOptions(settings: readonly string[], replications: number): string {
  return [...settings.map((each) => `--set "${each}"`), `--replications ${replications}`].join(" ");
}
