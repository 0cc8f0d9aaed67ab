import { readFileSync } from 'node:fs';
import type { Effect, FieldEvent, Session } from '../../../src/screens/field/session.ts';
import { newSession } from '../../../src/screens/field/session.ts';
import { updateField } from '../../../src/screens/field/update.ts';
import type { Key, NamedKey } from '../../../src/screens/keyboard.ts';
import { readSpeciesList } from '../../../src/taxa/species-list.ts';
import { indexTaxa } from '../../../src/taxa/taxon-index.ts';
import { epochOf } from '../../../src/visit/time.ts';
import { newVisit } from '../../../src/visit/visit.ts';

const csv = readFileSync(
  new URL('../../../taxa/britain-ireland/birds.csv', import.meta.url),
  'utf8',
);
const INDEX = indexTaxa(
  readSpeciesList({ name: 'britain-ireland-birds', region: 'britain-ireland', group: 'birds' }, csv)
    .taxa,
);

const START = '2026-11-14T07:40:00+00:00';
export const SALLOW_MERE = {
  name: 'Sallow Mere',
  position: { latitude: 51.12, longitude: -2.85 },
  verbatimCoordinates: '51.12, -2.85',
  uncertainty: null,
  habitat: null,
  protection: null,
  timeZone: 'Europe/London',
};

/** A session at the invented Sallow Mere, or with no place yet. */
export function session(place: typeof SALLOW_MERE | null = SALLOW_MERE): Session {
  return newSession({
    visit: newVisit({ id: uuid(0), timeZone: 'Europe/London', start: START, place }),
    index: INDEX,
    groups: { 'britain-ireland-birds': 'birds' },
    placeAssumed: false,
    now: epochOf(START),
    message: null,
    size: { columns: 80, rows: 24 },
    saved: { changes: 0, file: null },
  });
}

function uuid(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;
}

/** Keys from a line such as `tuf 12<enter><escape>u`. */
export function keysOf(typed: string): Key[] {
  return [...typed.matchAll(/<([a-z- ]+)>|(.)/gsu)].map(([, name, text]) =>
    name === undefined ? { name: 'text', text: text ?? '' } : { name: name as NamedKey },
  );
}

export interface Driven {
  session: Session;
  effects: Effect[];
}

/** Presses keys one after another, a second apart. */
export function press(from: Session, typed: string): Driven {
  let at = from;
  const effects: Effect[] = [];
  for (const key of keysOf(typed)) {
    const now = at.now + 1000;
    const result = updateField(at, { kind: 'key', key, now, id: uuid(now % 1e9) });
    at = result.session;
    effects.push(...result.effects);
  }
  return { session: at, effects };
}

export function tell(from: Session, ...events: FieldEvent[]): Session {
  return events.reduce((at, event) => updateField(at, event).session, from);
}
