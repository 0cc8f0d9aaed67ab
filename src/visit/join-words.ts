import { type Entry, nameOf } from './entry.ts';
import { alike, canonical } from './join-canonical.ts';
import { PARTS, unnumbered } from './join-history.ts';
import { dateOf } from './time.ts';
import type { Conflict, Visit } from './visit.ts';

/** What a copy that was joined brought, a line each: the visit, then its new numbers and conflicts. */
export function joinedWords(ours: Visit, theirs: Visit, joined: Visit): string[] {
  const conflicts = newConflicts(ours, joined);
  const known = byId(ours.entries);
  const came = joined.entries.filter(({ id }) => !known.has(id)).length;
  const changed = joined.entries.filter((entry) => {
    const before = known.get(entry.id);
    return before !== undefined && !alike(unnumbered(before), unnumbered(entry));
  }).length;
  const parts = PARTS.filter((part) => !alike(ours[part], joined[part]));
  const news = [
    came === 0 ? '' : `${several(came, 'entry', 'entries')} came`,
    changed === 0 ? '' : `${several(changed, 'entry', 'entries')} changed`,
    parts.length === 0 ? '' : `${parts.map(partWords).join(', ')} changed`,
    conflicts.length === 0 ? '' : several(conflicts.length, 'conflict', 'conflicts'),
  ].filter((words) => words !== '');
  return [
    `${visitWords(joined)}: ${news.length === 0 ? 'earlier values came' : news.join(', ')}`,
    ...numberWords(ours, joined, 'here'),
    ...numberWords(theirs, joined, 'in the other copy'),
    ...conflicts.map((conflict) => conflictWords(conflict, joined)),
  ];
}

/** The day and place of a visit: `2026-11-14 Sallow Mere`. */
export function visitWords({ start, place }: Visit): string {
  return `${dateOf(start)} ${place?.name ?? '(no place)'}`;
}

/** Conflicts that a copy did not know of. */
export function newConflicts(ours: Visit, joined: Visit): Conflict[] {
  const known = new Set(ours.conflicts.map(canonical));
  return joined.conflicts.filter((conflict) => !known.has(canonical(conflict)));
}

/** `1 entry`, `3 entries`. */
export function several(count: number, one: string, more: string): string {
  return `${count} ${count === 1 ? one : more}`;
}

/** Pictures and paper notes go by the numbers: whoever wrote one down must hear of the new one. */
function numberWords(copy: Visit, joined: Visit, where: string): string[] {
  const before = byId(copy.entries);
  return joined.entries.flatMap((entry) => {
    const number = before.get(entry.id)?.number;
    if (number === undefined || number === entry.number) return [];
    return `  ${nameOf(entry)}, ${number} ${where}, has the number ${entry.number} now`;
  });
}

function conflictWords({ part, entryId, stands, other }: Conflict, joined: Visit): string {
  const number = joined.entries.find(({ id }) => id === entryId)?.number;
  const what = number === undefined ? partWords(part) : `entry ${number}`;
  return `  ${what}: "${stands}" stands, the other value is "${other}"`;
}

function partWords(part: Conflict['part']): string {
  return part === 'highest' ? 'highest counts' : part;
}

function byId(entries: readonly Entry[]): Map<Entry['id'], Entry> {
  return new Map(entries.map((entry) => [entry.id, entry]));
}
