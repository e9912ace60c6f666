// How V8 is set for a program that mostly runs for a moment and then ends; its code is kept under the same flags.

/**
 * V8 compiles code anew for speed only after it has run some twenty times as long as by default: in a short call that never pays, and
 * a long one hardly notices. Garbage is collected at one go: nobody watches this program for jerks. WebAssembly is compiled when it is
 * called, and optimized only once it has run for some ten simulated hours: the compiler, in a thread of its own, is in the way of a short run.
 */
export const engineFlags = [
  "--interrupt-budget=3000000",
  "--no-incremental-marking",
  "--wasm-lazy-compilation",
  "--wasm-tiering-budget=2000000000",
].join(" ");
