// What the build makes of a program for the core, and what every host that runs it offers; the libraries of the compiler tell neither.
declare module "*.wasm" {
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}

/** Real numbers, eight bytes each, lowest byte first: what `x.ts` exports as `numbers`, worked out by the build. */
declare module "*.f64" {
  const bytes: Uint8Array<ArrayBuffer>;
  export default bytes;
}

declare namespace WebAssembly {
  interface Memory {
    readonly buffer: ArrayBuffer;
  }
  interface Module {
    readonly [Symbol.toStringTag]: string;
  }
  interface Instance {
    readonly exports: object;
  }
  const Module: new (bytes: Uint8Array<ArrayBuffer>) => Module;
  const Instance: new (module: Module, imports: Readonly<Record<string, object>>) => Instance;
}
