// Stands in for the package `debug` in the bundle: the mathematics packages drag it in, and it would reach for a terminal.
export default function openLog() {
  return () => undefined;
}
