const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\r': '&#13;',
};

/** What XML 1.0 (section 2.2) has no character for: control characters, halves of pairs, non-characters. */
const NOT_XML = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

/** Text for the content of an element or for an attribute in double quotes. */
export function xmlText(text: string): string {
  return text.replace(NOT_XML, '\ufffd').replace(/[&<>"\r]/g, (sign) => ENTITIES[sign] ?? sign);
}

/** An element that holds text, on a line of its own; none for an empty text. */
export function textElement(name: string, text: string, indent = ''): string {
  return text === '' ? '' : `${indent}<${name}>${xmlText(text)}</${name}>\n`;
}
