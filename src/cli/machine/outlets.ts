// Standard output and standard error, and the end of the process after all output is written.
import { exitCode, worstOf } from "./exitCode.ts";
import { MachineFailure, nameOfFailure } from "./machineFailure.ts";

/** Sets the exit code unless a worse one is set. */
export function leave(code: number): void {
  process.exitCode = worstOf([Number(process.exitCode ?? 0), code]);
}

/** A closed pipe (`| head`) is not an error; a full disk behind `>` is. */
function guard(stream: NodeJS.WriteStream, name: string): NodeJS.WriteStream {
  return stream.on("error", (error) => {
    if (nameOfFailure(error) === "EPIPE") return;
    leave(exitCode.machineFailed);
    if (stream === process.stdout)
      process.stderr.write(`blowcell: ${new MachineFailure(`write to ${name}`, error).message}\n`);
  });
}

/** Opened when first needed. */
export class Outlets {
  #output: NodeJS.WriteStream | undefined;
  #error: NodeJS.WriteStream | undefined;

  get output(): NodeJS.WriteStream {
    return (this.#output ??= guard(process.stdout, "standard output"));
  }

  get error(): NodeJS.WriteStream {
    return (this.#error ??= guard(process.stderr, "standard error"));
  }

  get isEmpty(): boolean {
    return [this.#output, this.#error].every((stream) => (stream?.writableLength ?? 0) === 0);
  }

  /** Ends the process after all output is written; Node would also wait for code that V8 still compiles. */
  end(): void {
    // Errors of pending writes, such as a full disk, come first.
    setImmediate(() => this.isEmpty && process.exit());
  }
}
