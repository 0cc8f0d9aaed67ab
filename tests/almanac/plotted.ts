import type { Plot } from '../../src/almanac/plots/lines.ts';

/** Shares of months, with a month without visits. */
export const MONTHS = [
  { label: 'April', value: 0.25, beside: '1 of 4' },
  { label: 'May', value: 1, beside: '12 of 12' },
  { label: 'June', value: 0, beside: '0 of 3' },
  { label: 'July', value: null, beside: 'no visits' },
];
/** Running totals of two years. */
export const YEARS: Plot = {
  series: [
    {
      name: '2025',
      points: [
        [1, 10],
        [6, 30],
        [12, 45],
      ],
    },
    {
      name: '2024',
      points: [
        [2, 20],
        [12, 40],
      ],
    },
  ],
  from: 1,
  to: 12,
  ticks: [
    { x: 1, label: 'Jan' },
    { x: 6, label: 'Jun' },
    { x: 12, label: 'Dec' },
  ],
  stepped: true,
};
