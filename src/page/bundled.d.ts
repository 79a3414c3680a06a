// What the bundler puts in place of these.
interface ImportMeta {
  /** The modules that match, each loaded when it is asked for. */
  readonly glob: <T>(
    patterns: readonly string[],
    options: { readonly query: string },
  ) => Readonly<Record<string, () => Promise<T>>>;
}
// Files that the bundler gives the address of.
declare module '*?url' {
  const url: string;
  export default url;
}
