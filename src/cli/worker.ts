// The entry of a worker thread: the same program, which here only does pieces of work.
import { loadProgram } from "./loadProgram.ts";

// Of all commands `run` has compiled the most of what a worker needs.
export default loadProgram("run").program.answer;
