import { MOST_SERIES, type Plot, type Series, topOf } from '../../almanac/plots/lines.ts';
import { element, type Picture, svgPicture, tenth } from './svg.ts';

/** Solid, dashed, dotted and so on, dark to lighter: lines are told apart on grey paper too. */
const DASHES = ['none', '7 3', '2 3', '9 3 2 3', '14 4', '4 6'] as const;
const GREYS = ['#000', '#333', '#333', '#555', '#555', '#555'] as const;
const MARGIN = { left: 48, right: 12, top: 12, bottom: 30 } as const;
const LEGEND_ROW = 18;

/** Lines as a picture, each with its own dashes and named below. Lines past the sixth are left out. */
export function linesSvg(plot: Plot, picture: Omit<Picture, 'description'>): string {
  const series = plot.series.slice(0, MOST_SERIES);
  const top = topOf(series);
  const bottom = picture.height - MARGIN.bottom - series.length * LEGEND_ROW;
  const right = picture.width - MARGIN.right;
  const across = (x: number) =>
    MARGIN.left + ((x - plot.from) / (plot.to - plot.from)) * (right - MARGIN.left);
  const down = (y: number) => bottom - (y / top) * (bottom - MARGIN.top);
  const axes = [
    element('path', {
      d: `M${MARGIN.left} ${MARGIN.top}V${tenth(bottom)}H${tenth(right)}`,
      fill: 'none',
      stroke: '#000',
    }),
    ...[0, top / 2, top].map((y) =>
      element('text', { x: MARGIN.left - 6, y: down(y) + 4, 'text-anchor': 'end' }, String(y)),
    ),
    ...plot.ticks.map(({ x, label }) =>
      element('text', { x: across(x), y: bottom + 16, 'text-anchor': 'middle' }, label),
    ),
  ];
  const lines = series.flatMap((each, at) => {
    const pen = {
      fill: 'none',
      stroke: GREYS[at] ?? '#000',
      'stroke-width': 2,
      'stroke-dasharray': DASHES[at] ?? 'none',
    };
    const y = bottom + MARGIN.bottom + at * LEGEND_ROW;
    return [
      element('path', { d: pathOf(each, across, down, plot.stepped), ...pen }),
      element('path', { d: `M${MARGIN.left} ${tenth(y)}h40`, ...pen }),
      element('text', { x: MARGIN.left + 48, y: y + 4 }, each.name),
    ];
  });
  const description = series
    .map(({ name, points }) => {
      const last = points.at(-1);
      return last ? `${name}: ${last[1]} at the end` : `${name}: nothing`;
    })
    .join('; ');
  return svgPicture({ ...picture, description }, [...axes, ...lines]);
}

function pathOf(
  { points }: Series,
  across: (x: number) => number,
  down: (y: number) => number,
  stepped: boolean,
): string {
  return points
    .map(([x, y], at) => {
      const to = `${tenth(across(x))} ${tenth(down(y))}`;
      if (at === 0) return `M${to}`;
      return stepped ? `H${tenth(across(x))}V${tenth(down(y))}` : `L${to}`;
    })
    .join('');
}
