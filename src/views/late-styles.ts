/**
 * Puts on the page the styles of code that comes late, where the first style sheet's follow. They come
 * within that code, so that a late part is one file and never shows without its look. Where there are
 * no constructed sheets, as in a test's page, there is nothing to look at either.
 */
export function addStyles(css: string): void {
  if (document.adoptedStyleSheets === undefined) return;
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets.push(sheet);
}
