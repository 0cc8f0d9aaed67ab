import { xmlText } from '../xml.ts';
import type { Block, Cell, Report, Section, Table } from './document.ts';
import { STYLE } from './style.ts';

/**
 * A report as one HTML file (WHATWG HTML) that needs nothing else: no script, no network, no font. The
 * policy in its head forbids them, should any text ever get past the escaping.
 */
export function htmlReport({ title, subtitle, sections }: Report): string {
  const links = sections.map(
    ({ id, heading }) => `<li><a href="#${id}">${xmlText(heading)}</a></li>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${xmlText(title)}</title>
<style>
${STYLE}</style>
</head>
<body>
<header>
<h1>${xmlText(title)}</h1>
<p>${xmlText(subtitle)}</p>
<nav aria-label="Contents"><ul>
${links.join('\n')}
</ul></nav>
</header>
<main>
${sections.map(sectionHtml).join('\n')}
</main>
</body>
</html>
`;
}

function sectionHtml({ id, heading, blocks }: Section): string {
  return [
    `<section aria-labelledby="${id}">`,
    `<h2 id="${id}">${xmlText(heading)}</h2>`,
    ...blocks.map(blockHtml),
    '</section>',
  ].join('\n');
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'text':
      return `<p>${xmlText(block.text)}</p>`;
    case 'list':
      return `<ul>\n${block.items.map((item) => `<li>${xmlText(item)}</li>`).join('\n')}\n</ul>`;
    case 'subheading':
      return `<h3>${xmlText(block.text)}</h3>`;
    case 'table':
      return tableHtml(block.table);
    case 'picture':
      return `<figure>\n<div class="wide">${block.svg}</div>\n<figcaption>${xmlText(block.words)}</figcaption>\n</figure>`;
  }
}

function tableHtml({ caption, columns, rows }: Table): string {
  const side = (at: number) => (columns[at]?.number ? ' class="number"' : '');
  const head = columns.map(({ name }, at) => `<th scope="col"${side(at)}>${xmlText(name)}</th>`);
  const body = rows.map((cells) => {
    const [first = '', ...others] = cells;
    const rest = others.map((cell, at) => `<td${side(at + 1)}>${cellHtml(cell)}</td>`);
    return `<tr><th scope="row">${cellHtml(first)}</th>${rest.join('')}</tr>`;
  });
  return [
    `<div class="wide" role="group" aria-label="${xmlText(caption)}" tabindex="0">`,
    `<table>\n<caption>${xmlText(caption)}</caption>`,
    `<thead><tr>${head.join('')}</tr></thead>`,
    `<tbody>\n${body.join('\n')}\n</tbody>`,
    '</table>\n</div>',
  ].join('\n');
}

function cellHtml(cell: Cell): string {
  return typeof cell === 'string' ? xmlText(cell) : `<i lang="la">${xmlText(cell.scientific)}</i>`;
}
