import { ABSENCES_STATED } from './absences.ts';
import { type Box, coarseBox } from './bounding-box.ts';
import { textElement, xmlText } from './xml.ts';

/** Licences under which data may be given, by their SPDX names, with the addresses of their texts. */
export const LICENCES = {
  'CC0-1.0': 'https://creativecommons.org/publicdomain/zero/1.0/legalcode',
  'CC-BY-4.0': 'https://creativecommons.org/licenses/by/4.0/legalcode',
  'CC-BY-NC-4.0': 'https://creativecommons.org/licenses/by-nc/4.0/legalcode',
} as const;
export type Licence = keyof typeof LICENCES;

/** What a data set says of itself. */
export interface Metadata {
  /** An identifier of this copy. */
  packageId: string;
  /** Null: one made of the names and the dates. */
  title: string | null;
  by: readonly string[];
  licence: Licence | null;
  /** Local date on which it was made. */
  published: string;
  absences: boolean;
  exact: boolean;
  /** What came of the visits; null where there was none. */
  span: { from: string; to: string } | null;
  box: Box | null;
}

/** The title that was asked for, or one of names and dates; never the name of a place. */
function titleOf({ title, by, span }: Pick<Metadata, 'title' | 'by' | 'span'>): string {
  if (title !== null) return title;
  const dates = span === null ? '' : `, ${span.from} to ${span.to}`;
  return `Field log${by.length > 0 ? ` of ${by.join(' and ')}` : ''}${dates}`;
}

/** The metadata of an archive in the Ecological Metadata Language, 2.2.0 (its elements from memory). */
export function emlXml(about: Metadata): string {
  const names = about.by.length > 0 ? about.by : ['unnamed observer'];
  const people = (element: string, all: readonly string[]) =>
    all.map((name) => `    <${element}>\n${nameXml(name)}    </${element}>\n`).join('');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    '<eml:eml xmlns:eml="https://eml.ecoinformatics.org/eml-2.2.0"',
    ` packageId="${xmlText(about.packageId)}" system="tussock" xml:lang="en">\n`,
    '  <dataset>\n',
    textElement('title', titleOf(about), '    '),
    people('creator', names),
    textElement('pubDate', about.published, '    '),
    textElement('language', 'en', '    '),
    '    <abstract>\n',
    statements(about)
      .map((sentence) => textElement('para', sentence, '      '))
      .join(''),
    '    </abstract>\n',
    rightsXml(about.licence),
    coverageXml(about),
    people('contact', names.slice(0, 1)),
    '  </dataset>\n',
    '</eml:eml>\n',
  ].join('');
}

/** EML asks for a surname, an organisation or a position; of a name nobody says which it is. */
function nameXml(name: string): string {
  return textElement('organizationName', name, '      ');
}

function statements({ absences, exact }: Metadata): string[] {
  return [
    'Visits and their entries from a field log. Entries that nobody could name are left out.',
    'occurrenceStatus is present or absent.',
    'individualCount is an exact count. Counts of at least, about or a range of individuals stand in organismQuantity with their type. What was seen and not counted has neither.',
    absences ? ABSENCES_STATED : 'What is not recorded was not necessarily absent.',
    exact
      ? 'Places are exact, also those of threatened and sensitive species: not for further distribution.'
      : 'Places of threatened and sensitive species, and private or protected places, are generalised for the whole visit (Chapman 2020, doi 10.15468/doc-5jp4-5g10); their names and all notes are withheld.',
  ];
}

function rightsXml(licence: Licence | null): string {
  if (licence === null) return '';
  const link = `<ulink url="${LICENCES[licence]}"><citetitle>${licence}</citetitle></ulink>`;
  return `    <intellectualRights>\n      <para>${link}</para>\n    </intellectualRights>\n`;
}

function coverageXml({ box, span }: Metadata): string {
  const coarse = box === null ? null : coarseBox(box);
  const place =
    coarse === null
      ? ''
      : [
          '      <geographicCoverage>\n',
          '        <geographicDescription>Box of all coordinates, on a grid of 0.1 degrees</geographicDescription>\n',
          '        <boundingCoordinates>\n',
          `          <westBoundingCoordinate>${coarse.west}</westBoundingCoordinate>\n`,
          `          <eastBoundingCoordinate>${coarse.east}</eastBoundingCoordinate>\n`,
          `          <northBoundingCoordinate>${coarse.north}</northBoundingCoordinate>\n`,
          `          <southBoundingCoordinate>${coarse.south}</southBoundingCoordinate>\n`,
          '        </boundingCoordinates>\n',
          '      </geographicCoverage>\n',
        ].join('');
  const dates =
    span === null
      ? ''
      : [
          '      <temporalCoverage>\n        <rangeOfDates>\n',
          `          <beginDate><calendarDate>${span.from}</calendarDate></beginDate>\n`,
          `          <endDate><calendarDate>${span.to}</calendarDate></endDate>\n`,
          '        </rangeOfDates>\n      </temporalCoverage>\n',
        ].join('');
  return place + dates === '' ? '' : `    <coverage>\n${place}${dates}    </coverage>\n`;
}
