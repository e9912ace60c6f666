// Standard output and standard error, and how the process ends once they have taken everything.
import { exitCode, worstOf } from "./exitCode.ts";
import { MachineFailure, nameOfFailure } from "./machineFailure.ts";

/** Leaves this exit code behind unless a worse one is already there. */
export function leave(code: number): void {
  process.exitCode = worstOf([Number(process.exitCode ?? 0), code]);
}

/** A reader that has seen enough (`| head`) is no fault; a full disk behind `>` is. */
function guard(stream: NodeJS.WriteStream, name: string): NodeJS.WriteStream {
  return stream.on("error", (error) => {
    if (nameOfFailure(error) === "EPIPE") return;
    leave(exitCode.machineFailed);
    if (stream === process.stdout)
      process.stderr.write(`blowcell: ${new MachineFailure(`write to ${name}`, error).message}\n`);
  });
}

/** Opened when first needed: a call that only writes files needs neither, and they take Node two milliseconds. */
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

  /** Ends the process as soon as all that was written has left: Node by itself would wait for what V8 compiles beside, though nobody will run it. */
  end(): void {
    // Whatever a write has to tell, such as a full disk, comes first.
    setImmediate(() => this.isEmpty && process.exit());
  }
}
