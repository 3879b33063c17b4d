const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Characters that XML 1.0 does not allow, clause 2.2, half surrogates among them: a parser would refuse all. */
const NOT_XML =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff][\udc00-\udfff]|[\ud800-\udfff]/g;

/** Text that may stand in markup, as content or in a quoted attribute, and never becomes markup itself. */
export function escapeMarkup(text: string): string {
  return text
    .replace(NOT_XML, (found) => (found.length === 2 ? found : '\ufffd'))
    .replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
}
