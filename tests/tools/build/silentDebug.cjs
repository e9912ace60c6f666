// Replaces the package `debug` in the bundle, which the mathematics packages require and which needs a terminal.

// CommonJS, because the packages call the result of `require` as a function.
module.exports = function openLog() {
  return () => undefined;
};
