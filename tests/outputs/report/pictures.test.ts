import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, test } from 'vitest';
import { barsSvg } from '../../../src/outputs/report/svg-bars.ts';
import { linesSvg } from '../../../src/outputs/report/svg-lines.ts';
import { MONTHS, YEARS } from '../../almanac/plotted.ts';

/** The elements of an XML document with their text; throws where it is not well-formed (W3C, XML 1.0). */
function elements(
  xml: string,
): { name: string; text: string; attributes: Record<string, string> }[] {
  const found: { name: string; text: string; attributes: Record<string, string> }[] = [];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    found.push({ name, text: '', attributes: attributes as Record<string, string> });
  });
  parser.on('text', (text) => {
    const last = found.at(-1);
    if (last) last.text += text.trim();
  });
  parser.write(xml).close();
  return found;
}

const pictures = (title: string): [string, string][] => [
  [
    'bars',
    barsSvg(
      MONTHS.map((bar) => ({ ...bar, label: title })),
      { id: 'p', title, width: 600 },
    ),
  ],
  [
    'lines',
    linesSvg(
      { ...YEARS, series: YEARS.series.map((each) => ({ ...each, name: title })) },
      { id: 'p', title, width: 600, height: 300 },
    ),
  ],
];

describe('Pictures', () => {
  // SVG 1.1 (W3C 2011), section 5.4; WAI-ARIA 1.2, aria-labelledby.
  test.each(pictures('Terns by month'))(
    '%s: a title and a description stand first, for screen readers.',
    (_, svg) => {
      const [root, title, description] = elements(svg);
      expect(root?.attributes).toMatchObject({ role: 'img', 'aria-labelledby': 'p-title p-desc' });
      expect(title).toMatchObject({
        name: 'title',
        text: 'Terns by month',
        attributes: { id: 'p-title' },
      });
      expect(description).toMatchObject({ name: 'desc', attributes: { id: 'p-desc' } });
      expect(description?.text).toMatch(/\d/);
    },
  );

  test.each(pictures('x'))('%s: only greys are used.', (_, svg) => {
    for (const { attributes } of elements(svg))
      for (const paint of [attributes.fill, attributes.stroke])
        expect(paint ?? 'none').toMatch(/^(?:none|#([0-9a-f])\1\1)$/);
  });

  test('They are well-formed, whatever the names.', () => {
    // Any code units, so also halves of a pair and what is no character of XML.
    const unit = fc.oneof(fc.integer({ min: 0, max: 0x7f }), fc.integer({ min: 0, max: 0xffff }));
    const names = fc.array(unit).map((units) => String.fromCharCode(...units));
    fc.assert(
      fc.property(names, (label) => {
        const series = YEARS.series.map((each) => ({ ...each, name: label }));
        const bars = barsSvg([{ label, value: 1, beside: label }], {
          id: label,
          title: label,
          width: 600,
        });
        const lines = linesSvg(
          { ...YEARS, series },
          { id: label, title: label, width: 600, height: 300 },
        );
        for (const svg of [bars, lines]) expect(elements(svg)[0]?.name).toBe('svg');
      }),
    );
  });

  test.each(pictures('<b>&"Terns" ]]>'))('%s: markup in a name stays text.', (_, svg) => {
    expect(elements(svg).find(({ name }) => name === 'title')?.text).toBe('<b>&"Terns" ]]>');
  });

  test('A bar is as wide as its value, and a gap has none.', () => {
    const svg = barsSvg(MONTHS, { id: 'p', title: 'Months', width: 600 });
    const widths = elements(svg)
      .filter(({ name, attributes }) => name === 'rect' && attributes.fill === '#555')
      .map(({ attributes }) => Number(attributes.width));
    expect(widths).toHaveLength(2);
    expect((widths[0] ?? 0) / (widths[1] ?? 1)).toBeCloseTo(0.25, 2);
  });

  test('Each line has dashes of its own, and its name.', () => {
    const all = elements(linesSvg(YEARS, { id: 'p', title: 'Years', width: 600, height: 300 }));
    const dashes = all.flatMap(({ attributes }) => attributes['stroke-dasharray'] ?? []);
    expect(new Set(dashes).size).toBe(2);
    const texts = all.filter(({ name }) => name === 'text').map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(['2024', '2025', 'Jan', '50']));
  });
});
