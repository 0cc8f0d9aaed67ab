import { xmlText } from '../xml.ts';

/** What a picture says to those who can't see it, and how large it is in pixels. */
export interface Picture {
  /** Beginning of the ids in the picture; another for each picture of one page. */
  id: string;
  title: string;
  /** What the picture shows, with its main numbers, in a sentence or more. */
  description: string;
  width: number;
  height: number;
}

/** An SVG picture (SVG 1.1) on white; the title and the description stand first, for screen readers. */
export function svgPicture(picture: Picture, parts: readonly string[]): string {
  const { title, description, width, height } = picture;
  const id = picture.id.replace(/[^A-Za-z0-9_-]/g, '-');
  return [
    element('svg', {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      'font-family': 'sans-serif',
      'font-size': 12,
    }).replace('/>', '>'),
    element('title', { id: `${id}-title` }, title),
    element('desc', { id: `${id}-desc` }, description),
    element('rect', { width, height, fill: '#fff' }),
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

/** An element with its attributes and, where there is one, its text; both are made safe. Numbers go to the tenth. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  content?: string,
): string {
  const given = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${xmlText(typeof value === 'number' ? tenth(value) : value)}"`,
  );
  const head = `<${name}${given.join('')}`;
  return content === undefined ? `${head}/>` : `${head}>${xmlText(content)}</${name}>`;
}

/** A number as it stands in a picture: to a tenth of a pixel. */
export function tenth(value: number): string {
  return String(Math.round(value * 10) / 10);
}
