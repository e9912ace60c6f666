// Replaces Node's child_process module for a package that never starts other programs here.
module.exports = {};
