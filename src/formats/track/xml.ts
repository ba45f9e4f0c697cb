/**
 * Text between tags and in attributes: names in files are text, never markup. Characters that XML 1.0 forbids
 * altogether (section 2.2) become the replacement character.
 */
export const xmlText = (text: string): string =>
  [...text]
    .map((c) => (isXmlCharacter(c.codePointAt(0) as number) ? c : '\uFFFD'))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

const isXmlCharacter = (code: number): boolean =>
  code === 0x9 ||
  code === 0xa ||
  code === 0xd ||
  (code >= 0x20 && code <= 0xd7ff) ||
  (code >= 0xe000 && code <= 0xfffd) ||
  code >= 0x10000;
