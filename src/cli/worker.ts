// The entry of a worker thread: the same program, which here only does pieces of work.
import { loadProgram } from "./loadProgram.ts";

export default loadProgram().answer;
