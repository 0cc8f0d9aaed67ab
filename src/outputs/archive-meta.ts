import { EVENT_TERMS } from './archive-events.ts';
import { INVENTORY_TERMS } from './archive-inventory.ts';
import { MEASUREMENT_TERMS } from './archive-measurements.ts';
import { OCCURRENCE_COLUMNS, type OccurrenceTerm } from './occurrence-columns.ts';
import { xmlText } from './xml.ts';

const DARWIN_CORE = 'http://rs.tdwg.org/dwc/terms/';
const HUMBOLDT = 'http://rs.tdwg.org/eco/terms/';

/** A table of the archive. Its first column is the identifier of the event. */
export interface ArchiveTable<Term extends string = string> {
  file: string;
  rowType: string;
  terms: readonly Term[];
  /** Of the terms that Darwin Core does not have. */
  namespace: string;
}

const OCCURRENCE_TERMS: readonly OccurrenceTerm[] = [
  'eventID',
  ...OCCURRENCE_COLUMNS.map(({ name }) => name).filter((name) => name !== 'eventID'),
];

/** The tables of the archive, its core first. */
export const ARCHIVE_TABLES = {
  events: {
    file: 'event.csv',
    rowType: `${DARWIN_CORE}Event`,
    terms: EVENT_TERMS,
    namespace: DARWIN_CORE,
  },
  occurrences: {
    file: 'occurrence.csv',
    rowType: `${DARWIN_CORE}Occurrence`,
    terms: OCCURRENCE_TERMS,
    namespace: DARWIN_CORE,
  },
  measurements: {
    file: 'measurementorfact.csv',
    rowType: `${DARWIN_CORE}MeasurementOrFact`,
    terms: MEASUREMENT_TERMS,
    namespace: DARWIN_CORE,
  },
  inventories: {
    file: 'humboldt.csv',
    rowType: `${HUMBOLDT}Event`,
    terms: ['eventID', ...INVENTORY_TERMS] as const,
    namespace: HUMBOLDT,
  },
} as const satisfies Record<string, ArchiveTable>;
export type ArchiveTableName = keyof typeof ARCHIVE_TABLES;

/** The address of a term of a table. */
function termUri(term: string, namespace: string): string {
  return `${term === 'eventID' ? DARWIN_CORE : namespace}${term}`;
}

/**
 * What the files of the archive are (TDWG, Darwin Core Text Guide, 2023-09-13): CSV as RFC 4180 writes
 * it, so that CRLF has to be declared.
 */
export function metaXml(): string {
  const { events, ...extensions } = ARCHIVE_TABLES;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml">',
    tableXml('core', 'id', events),
    ...Object.values(extensions).map((table) => tableXml('extension', 'coreid', table)),
    '</archive>',
    '',
  ].join('\n');
}

function tableXml(element: string, id: string, table: ArchiveTable): string {
  const { rowType, file, terms, namespace } = table;
  const attributes = [
    'encoding="UTF-8"',
    'linesTerminatedBy="\\r\\n"',
    'fieldsTerminatedBy=","',
    'fieldsEnclosedBy="&quot;"',
    'ignoreHeaderLines="1"',
    `rowType="${xmlText(rowType)}"`,
  ];
  return [
    `  <${element} ${attributes.join(' ')}>`,
    `    <files><location>${xmlText(file)}</location></files>`,
    `    <${id} index="0"/>`,
    ...terms.map(
      (term, at) => `    <field index="${at}" term="${xmlText(termUri(term, namespace))}"/>`,
    ),
    `  </${element}>`,
  ].join('\n');
}
