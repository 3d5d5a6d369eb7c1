/** A script for the audio thread, built as a file of its own: the page may run no inline script. */
declare module '*?worker&url' {
  const url: string;
  export default url;
}
