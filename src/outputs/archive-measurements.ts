import { PART_LETTERS } from '../visit/count.ts';
import { eventOfEntry, weatherEventId } from './archive-events.ts';
import type { Cell } from './csv-rows.ts';
import type { GivenVisit, GivenWeather } from './given-visit.ts';
import { visitUrn } from './visit-columns.ts';

/** Terms of a measurement or fact in the archive; the first refers to the event. */
export const MEASUREMENT_TERMS = [
  'eventID',
  'occurrenceID',
  'measurementID',
  'measurementType',
  'measurementValue',
  'measurementUnit',
  'measurementMethod',
] as const;
type Measurement = Record<(typeof MEASUREMENT_TERMS)[number], Cell>;

type Fact = [type: string, value: string | number | null, unit: string, method: string];

/**
 * What was measured or estimated: the weather by its readings, how far was walked, and how many of an
 * entry's individuals were of a sex or age.
 */
export function measurementsOf(visit: GivenVisit): Measurement[] {
  return [
    ...measured(visitUrn(visit), '', [
      ['distance walked', visit.effort.distance, 'm', ''],
      ['number of observers', visit.effort.observers, '', ''],
    ]),
    ...visit.weather.flatMap((reading, at) =>
      measured(weatherEventId(visit, at), '', weatherFacts(reading)),
    ),
    ...visit.entries.flatMap((entry) =>
      entry.taxon === null
        ? []
        : measured(eventOfEntry(visit, entry), `urn:uuid:${entry.id}`, [
            ...entry.parts.map(({ letter, value }): Fact => {
              const { word } = PART_LETTERS[letter];
              return [`number of ${word} individuals`, value, 'individuals', 'told by eye'];
            }),
            ['heading', entry.heading, '', 'point of the compass towards which they passed'],
          ]),
    ),
  ];
}

function weatherFacts(reading: GivenWeather): Fact[] {
  return [
    ['air temperature', reading.temperature, '°C', ''],
    ['wind force', reading.windForce, 'Beaufort', 'Beaufort scale, WMO-No. 8'],
    ['wind speed', reading.windSpeed, 'm/s', ''],
    ['wind direction', reading.windFrom, '', 'point of the compass from which it blows'],
    ['cloud cover', reading.cloud, 'oktas', '9 is a sky that can not be seen'],
    ['precipitation', reading.precipitation, '', ''],
    ['visibility', reading.visibility, '', ''],
  ];
}

function measured(eventID: string, occurrenceID: string, facts: readonly Fact[]): Measurement[] {
  return facts.flatMap(([type, value, unit, method]) =>
    value === null
      ? []
      : {
          eventID,
          occurrenceID,
          measurementID: partOf(occurrenceID || eventID, type.replaceAll(' ', '-')),
          measurementType: type,
          measurementValue: value,
          measurementUnit: unit,
          measurementMethod: method,
        },
  );
}

/** A part of what an identifier names (RFC 8141, f-component, which may have parts itself). */
function partOf(id: string, part: string): string {
  return `${id}${id.includes('#') ? '/' : '#'}${part}`;
}
