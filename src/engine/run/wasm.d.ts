// Types of the compiled core and of WebAssembly, which the libraries of the compiler leave out.
declare module "*.wasm" {
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
