// The changes of a scenario by one call.

/** Values of keys of `run` that options of their own give, as text. */
export type RunTexts = Readonly<Partial<Record<"seed" | "replications" | "length" | "precision", string>>>;

export interface Settings {
  /** Texts of the form `path=value`, in order. */
  readonly set?: readonly string[];
  /** They come after `set`. */
  readonly run?: RunTexts;
}
