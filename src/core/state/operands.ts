// What follows an operation in the code.

/** The address of a record, or of a piece of code, that follows the operation. */
export function addressAt(at: usize, number: i32): usize {
  return load<usize>(at + ((<usize>number) << 2));
}

/** A number that follows the operation. */
export function operand(at: usize, number: i32): i32 {
  return load<i32>(at + ((<usize>number) << 2));
}
