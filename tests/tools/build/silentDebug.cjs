// Stands in for the package `debug` in the bundle: the mathematics packages drag it in, and it would reach for a terminal.
// CommonJS, since they call what `require` hands them: of an ES module that would be its namespace, which is no function.
module.exports = function openLog() {
  return () => undefined;
};
