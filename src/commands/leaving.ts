import { type Session, unsavedNumbers } from '../screens/field/session.ts';
import { harmless } from '../screens/paint.ts';
import { entryText } from '../visit/entry.ts';
import { durationWords } from '../visit/time.ts';
import { distanceShown } from '../visit/units-shown.ts';
import { speciesSeen, standing, watched } from '../visit/visit.ts';

/** What stands in the terminal after the screen is left: the visit in one line, and what was typed and not entered. */
export function leavingWords(session: Session): string {
  const open = Object.values(session.drafts)
    .map((line) => line.text.trim())
    .filter((text) => text !== '')
    .map((text) => `Typed and not entered: ${harmless(text)}\n`);
  return [summaryWords(session), ...open].join('');
}

function summaryWords({ visit, saved, now, units }: Session): string {
  if (saved.file === null) return 'Nothing was logged; no file was written.\n';
  const entries = standing(visit);
  const { distance } = visit.effort;
  const facts = [
    `${entries.length} ${entries.length === 1 ? 'entry' : 'entries'}`,
    `${speciesSeen(visit)} species`,
    `watched ${durationWords(watched(visit, now))}`,
    distance === null ? '' : distanceShown(distance, units.distance),
    visit.end === null ? 'still open for 12 hours' : 'ended',
  ].filter((part) => part !== '');
  const where = visit.place?.name ?? 'No place yet';
  return `${harmless(`${where}: ${facts.join(', ')}. ${saved.file}`)}\n`;
}

/** What is not on disk when the screen is left, so that it at least stands in the terminal; else null. */
export function unsavedWords(session: Session): string | null {
  const { visit, saved } = session;
  if (saved.changes >= visit.changes.length) return null;
  const open = unsavedNumbers(session);
  const lines = visit.entries
    .filter((entry) => open.has(entry.number))
    .map((entry) => harmless(`  ${entry.number} ${entry.time} ${entryText(entry)}`));
  return [
    `NOT SAVED: ${saved.failure ?? 'the save did not finish'}. These entries are not in the notebook:`,
    ...lines,
    'Copy them, mend the disk and type them again.',
    '',
  ].join('\n');
}
