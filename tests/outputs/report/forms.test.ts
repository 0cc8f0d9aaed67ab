import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { type Report, table, text } from '../../../src/outputs/report/document.ts';
import { htmlReport } from '../../../src/outputs/report/html.ts';
import { markdownReport } from '../../../src/outputs/report/markdown.ts';

/** A report that has a text in every part that can hold one. */
function everywhere(words: string): Report {
  return {
    title: words,
    subtitle: words,
    sections: [
      {
        id: 'one',
        heading: words,
        blocks: [
          text(words),
          { kind: 'list', items: [words, words] },
          { kind: 'subheading', text: words },
          table(words, [{ name: words }, { name: words }], [[words, { scientific: words }]]),
          { kind: 'picture', svg: '<svg xmlns="http://www.w3.org/2000/svg"/>', words },
        ],
      },
    ],
  };
}

/** The elements in the body, read as XML: what is not well-formed throws (W3C, XML 1.0). */
function elementsOf(html: string): { names: string[]; text: string; attributes: string[] } {
  const names: string[] = [];
  const attributes = new Set<string>();
  let said = '';
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    names.push(tag.name);
    for (const name of Object.keys(tag.attributes)) attributes.add(name);
  });
  parser.on('text', (part) => {
    said += part;
  });
  parser.write(html.slice(html.indexOf('<body>'), html.indexOf('</html>'))).close();
  return { names, text: said, attributes: [...attributes].sort() };
}

/** Ways in which text becomes markup: OWASP, Cross Site Scripting Prevention, rules for HTML and attributes. */
const INJECTIONS = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '</style></title><svg onload=alert(1)>',
  '<!-- ', // A comment would swallow the rest.
  ']]><b>',
  '&lt;b&gt; &#60;b&#62;',
  'Withy & Son "quoted"',
];

describe('The report as HTML', () => {
  const plain = elementsOf(htmlReport(everywhere('plain')));

  test.each(INJECTIONS)('keeps %j as text, wherever it stands.', (words) => {
    const html = htmlReport(everywhere(words));
    const read = elementsOf(html);
    expect(read.names).toEqual(plain.names);
    expect(read.attributes).toEqual(plain.attributes);
    expect(read.text.split(words)).toHaveLength(plain.text.split('plain').length);
    expect(html).not.toMatch(/<(?:script|img|iframe|object|link)\b/i);
    expect(html.match(/<\/title>/g)).toHaveLength(1);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  test('has the same elements, whatever the text.', () => {
    const piece = fc.constantFrom('<', '>', '&', '"', "'", '--', '\0', '\ud800', 'b', '/', ' ');
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        const read = elementsOf(htmlReport(everywhere(pieces.join(''))));
        expect(read.names).toEqual(plain.names);
      }),
    );
  });

  test('asks for nothing from outside, and forbids it.', () => {
    const html = htmlReport(everywhere('plain'));
    expect(html).not.toMatch(/\b(?:src|srcset|action|data)=|url\(|@import/i);
    expect(html.match(/href="[^#]/g)).toBeNull();
    // Content Security Policy Level 3 (W3C).
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
  });
});

describe('The report as Markdown', () => {
  // CommonMark 0.31, 2.4: a backslash before punctuation makes it plain; 4.6 and 6.6: HTML begins with <.
  test.each(INJECTIONS)('has no HTML of %j.', (words) => {
    expect(markdownReport(everywhere(words))).not.toMatch(/<|(?<!\\)\|[^ \n]/);
  });

  test.each([
    ['| a | b', '\\| a \\| b'],
    ['*x* _y_ `z`', '\\*x\\* \\_y\\_ \\`z\\`'],
    ['[x](y)', '\\[x\\](y)'],
    ['# one\n# two', '\\# one \\# two'],
    ['- item', '\\- item'],
  ])('keeps %j as text on one line.', (words, written) => {
    expect(markdownReport(everywhere(words)).split('\n')).toContain(written);
  });

  test('has every text of the page but the pictures.', () => {
    const said = markdownReport(everywhere('plain')).match(/plain/g) ?? [];
    // Title, subtitle, heading, text, two items, subheading, caption, two columns, two cells.
    expect(said).toHaveLength(12);
  });
});
