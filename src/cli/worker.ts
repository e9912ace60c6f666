// The entry of a worker thread: the same program, limited to tasks of work.
import { loadProgram } from "./loadProgram.ts";

// The code that `run` keeps is closest to what a worker needs.
export default loadProgram("run").program.answer;
