// V8's flags for a program with short runs; its compiled code is kept under the same flags.

/**
 * V8 optimizes code about twenty times later than by default: optimization does not pay in a short call and hardly delays a long one.
 * Garbage is collected in one pass, because the program has no animation. WebAssembly is compiled when it is called, and optimized
 * after about ten simulated hours, because the compiler's thread competes with a short run.
 */
export const engineFlags = [
  "--interrupt-budget=3000000",
  "--no-incremental-marking",
  "--wasm-lazy-compilation",
  "--wasm-tiering-budget=2000000000",
].join(" ");
