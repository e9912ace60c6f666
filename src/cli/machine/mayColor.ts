// Whether text may be colored: only on a terminal, and not where color is switched off.

type Environment = Readonly<Record<string, string | undefined>>;

/** NO_COLOR counts when it is set and not empty, as its convention (no-color.org) says. */
export function mayColor(outlet: { readonly isTTY?: boolean }, environment: Environment): boolean {
  const { NO_COLOR: refusal = "", TERM: terminal } = environment;
  return outlet.isTTY === true && refusal === "" && terminal !== "dumb";
}
