// Types of the list of packages in a bundle.
/** Reads only the names of a bundle's input files. */
export function thirdParty(metafiles: readonly { readonly inputs: Readonly<Record<string, unknown>> }[]): string;
