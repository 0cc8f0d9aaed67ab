import {
  isTemporary,
  leftoverFindings,
  lockFindings,
  placesFindings,
  settingsFindings,
  stateFindings,
  strangeFindings,
} from './check-rest.ts';
import { checkVisits } from './check-visits.ts';
import type { Finding } from './finding.ts';
import { filesBelow, topFiles } from './folder-files.ts';

/**
 * Looks through a whole notebook and tells what is not as it should be, file by file; nothing is
 * changed. Species lists are looked at by whoever knows what they are. Rejects with the system's error
 * where a folder can't be read.
 */
export async function checkNotebook(notebook: string, now: number): Promise<Finding[]> {
  const visits = await filesBelow(notebook, 'visits');
  const places = ['lists', 'states', 'locks'];
  const others = await Promise.all(places.map((folder) => filesBelow(notebook, folder)));
  return [
    ...(await strangeFindings(notebook)),
    ...(await settingsFindings(notebook)),
    ...(await placesFindings(notebook)),
    ...leftoverFindings([...(await topFiles(notebook)), ...visits, ...others.flat()], now),
    ...(await checkVisits(
      notebook,
      visits.filter((file) => !isTemporary(file)),
    )),
    ...(await stateFindings(notebook)),
    ...(await lockFindings(notebook)),
  ];
}
