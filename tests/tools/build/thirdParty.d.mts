// Types of the list of packages in a bundle.
/** Only the names of a bundle's input files are looked at. */
export function thirdParty(metafiles: readonly { readonly inputs: Readonly<Record<string, unknown>> }[]): string;
