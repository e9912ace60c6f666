// Starts sessions and asks them for one run after another; a session that a mutant has ended is replaced.
import { fork } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";

const program = fileURLToPath(new URL("session.mjs", import.meta.url));

/** Processor seconds in which a new session transforms the sources. */
const preparing = 40;

export class Runner {
  #session;
  #environment;

  constructor(environment) {
    this.#environment = { ...process.env, NODE_NO_WARNINGS: "1", ...environment };
  }

  async #open() {
    // A mutant that fills the memory ends soon.
    const execArgv = ["--max-old-space-size=2048"];
    const stdio = ["ignore", "ignore", process.env.MUTATION_ERRORS ? "inherit" : "ignore", "ipc"];
    this.#session = fork(program, { execArgv, stdio, env: this.#environment });
    await once(this.#session, "message");
  }

  /** The outcome of a run, undefined where the session ended in it. */
  async ask(run) {
    const isFresh = !this.#session?.connected;
    if (isFresh) await this.#open();
    const session = this.#session;
    const said = await new Promise((settle) => {
      session.removeAllListeners();
      session.once("message", settle).once("exit", () => settle(undefined));
      session.send(isFresh ? { ...run, limit: run.limit + preparing } : run);
    });
    if (said === undefined) this.#session = undefined;
    return said;
  }

  close() {
    if (this.#session?.connected) this.#session.disconnect();
  }
}
