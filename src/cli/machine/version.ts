// The version of the package, set by the build.
declare const BLOWCELL_VERSION: string;

export const version: string = BLOWCELL_VERSION;
