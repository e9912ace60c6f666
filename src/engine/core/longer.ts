// Arrays that must grow: a longer one with the same beginning. What they held before is not given back; they double, so it stays little.

export function longerWholes(from: StaticArray<i32>): StaticArray<i32> {
  const to = new StaticArray<i32>(2 * from.length);
  memory.copy(changetype<usize>(to), changetype<usize>(from), <usize>from.length << 2);
  return to;
}

export function longerReals(from: StaticArray<f64>): StaticArray<f64> {
  const to = new StaticArray<f64>(2 * from.length);
  memory.copy(changetype<usize>(to), changetype<usize>(from), <usize>from.length << 3);
  return to;
}
