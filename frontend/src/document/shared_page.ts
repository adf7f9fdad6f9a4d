/** A piece as one file: a page that any browser opens, and that carries the document itself. */

const OPEN = '<script type="application/json" id="pegwright-document">';
const CLOSE = "</script>";

/** Return the page with the document within, which no browser runs or shows. */
export function putDocumentIn(page: string, document: object): string {
  const json = JSON.stringify(document).replaceAll("<", "\\u003c"); // no text of the maker's can end the element
  const at = page.lastIndexOf("</body>");
  const where = at < 0 ? page.length : at;
  return page.slice(0, where) + OPEN + json + CLOSE + page.slice(where);
}

/** Return the document of a text: the text itself, or what a page carries. Null where a page carries none, or the text
 * is something else.
 * @throws SyntaxError where it looks like a document and is none. */
export function documentIn(text: string): object | null {
  if (/^\s*\{/.test(text)) return JSON.parse(text) as object;
  const at = text.lastIndexOf(OPEN);
  if (at < 0) return null;
  return JSON.parse(text.slice(at + OPEN.length, text.indexOf(CLOSE, at))) as object;
}

export function isPage(text: string): boolean {
  return /^\s*<(!doctype|html)/i.test(text);
}
