import { xmlText } from '../xml.ts';
import type { Block, Cell, Report, Table } from './document.ts';

/** A report as Markdown (CommonMark 0.31, with the tables of GitHub Flavored Markdown); no pictures. */
export function markdownReport({ title, subtitle, sections }: Report): string {
  const parts = [
    `# ${plain(title)}`,
    plain(subtitle),
    ...sections.flatMap(({ heading, blocks }) => [
      `## ${plain(heading)}`,
      ...blocks.flatMap(blockText),
    ]),
  ];
  return `${parts.join('\n\n')}\n`;
}

function blockText(block: Block): string[] {
  switch (block.kind) {
    case 'text':
      return [plain(block.text)];
    case 'list':
      return [block.items.map((item) => `- ${plain(item)}`).join('\n')];
    case 'subheading':
      return [`### ${plain(block.text)}`];
    case 'table':
      return tableText(block.table);
    case 'picture':
      return [];
  }
}

function tableText({ caption, columns, rows }: Table): string[] {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [
    `**${plain(caption)}**`,
    [
      row(columns.map(({ name }) => plain(name))),
      row(columns.map(({ number }) => (number ? '--:' : '---'))),
      ...rows.map((cells) => row(cells.map(cellText))),
    ].join('\n'),
  ];
}

function cellText(cell: Cell): string {
  return typeof cell === 'string' ? plain(cell) : `*${plain(cell.scientific)}*`;
}

/** Text that Markdown takes for nothing but text, on one line; `<` and `&` are entities, so no HTML is in it. */
function plain(text: string): string {
  return xmlText(text.replace(/\s+/g, ' ').trim())
    .replaceAll('&quot;', '"')
    .replace(/[\\`*_[\]|~#$]/g, '\\$&')
    .replace(/^(?:[-+=]|\d{1,9}(?=[.)]))/, (start) =>
      /\d/.test(start) ? `${start}\u200b` : `\\${start}`,
    );
}
