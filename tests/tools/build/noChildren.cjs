// In place of Node's own module where a package may start other programs and we never let it.
module.exports = {};
