/** Name, size and time of every source below a folder that ends in a slash, in short. */
export function stampOf(root: string): string;
/** The address of the bundled program made from the sources as they stand; rejects where none can be built. */
export function builtProgram(): Promise<string>;
