import type { Bar } from '../../almanac/plots/bars.ts';
import { fitted } from '../../almanac/plots/fitted.ts';
import { element, type Picture, svgPicture } from './svg.ts';

const ROW = 20;
const LABEL = 150;
const BESIDE = 120;
const MOST_LETTERS = 24;

/** Bars as a picture, one below the other, each with its number: the grey of the bars carries nothing. */
export function barsSvg(
  bars: readonly Bar[],
  picture: Omit<Picture, 'height' | 'description'>,
): string {
  const greatest = Math.max(0, ...bars.map(({ value }) => value ?? 0));
  const room = Math.max(20, picture.width - LABEL - BESIDE);
  const height = bars.length * ROW + 10;
  const parts = bars.flatMap(({ label, value, beside }, at) => {
    const y = at * ROW + 5;
    const width = value === null || greatest === 0 ? 0 : (Math.max(0, value) / greatest) * room;
    return [
      element(
        'text',
        { x: LABEL - 8, y: y + 13, 'text-anchor': 'end' },
        fitted(label, MOST_LETTERS).trimEnd(),
      ),
      ...(width > 0
        ? [element('rect', { x: LABEL, y: y + 2, width, height: ROW - 6, fill: '#555' })]
        : []),
      element('text', { x: LABEL + width + 6, y: y + 13 }, beside),
    ];
  });
  const axis = element('path', { d: `M${LABEL} 2V${height - 2}`, stroke: '#000' });
  const description = bars.map(({ label, beside }) => `${label}: ${beside}`).join('; ');
  return svgPicture({ ...picture, height, description }, [...parts, axis]);
}
