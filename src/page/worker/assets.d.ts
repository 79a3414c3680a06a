// Files that the bundler gives the address of.
declare module '*?url' {
  const url: string;
  export default url;
}
