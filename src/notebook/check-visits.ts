import { basename } from 'node:path';
import { dateOf } from '../visit/time.ts';
import { odditiesIn } from './check-visit.ts';
import { goesOnFrom } from './copies.ts';
import { curable, type Finding, told } from './finding.ts';
import type { FoundFile } from './folder-files.ts';
import { newestState } from './lost-visit.ts';
import { newerWords, type OpenedVisit, readVisit } from './visit-file.ts';

/** Names that programs which copy folders between machines, or people, give to a second copy. */
const COPY_NAME = /conflict|\(\d+\)| \d+\.json$| - copy|\bcopy of\b/i;
const READ = /^visits\/\d{4}\/\d{4}-[^/]*\.json$/;

interface Named extends OpenedVisit {
  name: string;
}

/** Everything that is wrong or odd about the visits of a notebook; `files` are those below `visits/`. */
export async function checkVisits(
  notebook: string,
  files: readonly FoundFile[],
): Promise<Finding[]> {
  const findings: Finding[] = [];
  const visits: Named[] = [];
  const broken: { file: FoundFile; problem: string }[] = [];
  for (const file of files) {
    if (!file.name.endsWith('.json')) {
      findings.push(told(file.name, 'is no visit', 'Move it elsewhere if you like.', false));
      continue;
    }
    if (!READ.test(file.name))
      findings.push(
        told(
          file.name,
          'is not read as a visit: it is not named by its date in the folder of its year',
          'Give it a name such as visits/2026/2026-11-14-walk.json.',
        ),
      );
    const read = await readVisit(file.path);
    if ('visit' in read) visits.push({ ...read, name: file.name });
    else if (read.broken) broken.push({ file, problem: read.problem });
    else findings.push(told(file.name, `can't be read: ${read.problem}`, 'It is left as it is.'));
  }
  for (const read of visits) findings.push(...visitFindings(read));
  findings.push(...copyFindings(visits));
  const ids = new Set<string>(visits.map(({ visit }) => visit.id));
  for (const { file, problem } of broken) {
    const { id, state } = await newestState(notebook, file.path, ids);
    if (id !== null) ids.add(id);
    const cure = { do: 'restore' as const, id, state };
    findings.push(curable(file.name, `can't be read: ${problem}`, cure));
  }
  return findings;
}

function visitFindings({ name, visit }: Named): Finding[] {
  const findings: Finding[] = [];
  const newer = newerWords(visit);
  if (newer !== null) findings.push(told(name, newer, 'Install the newer Tussock.', false));
  const date = dateOf(visit.start);
  const [, year, file = ''] = name.split('/');
  if (READ.test(name) && (year !== date.slice(0, 4) || !file.startsWith(`${date}-`)))
    findings.push(
      told(
        name,
        `is named by another date than that of its start, ${date}`,
        `Rename it to visits/${date.slice(0, 4)}/${date}${file.replace(/^[\d-]*/, '-')}.`,
      ),
    );
  for (const { what, fault } of odditiesIn(visit))
    findings.push(
      told(
        name,
        what,
        fault ? 'tussock states shows earlier states that may be whole.' : '',
        fault,
      ),
    );
  return findings;
}

/** Several files of one visit: all but one hide behind the longest. */
function copyFindings(visits: readonly Named[]): Finding[] {
  const byId = new Map<string, Named[]>();
  for (const read of visits) byId.set(read.visit.id, [...(byId.get(read.visit.id) ?? []), read]);
  const alone = visits.filter(
    ({ visit, name }) => byId.get(visit.id)?.length === 1 && COPY_NAME.test(basename(name)),
  );
  return [
    ...alone.map(({ name }) =>
      told(
        name,
        'is named as a second copy, but no other file holds this visit',
        'Rename it if it is the visit that you want.',
        false,
      ),
    ),
    ...[...byId.values()].flatMap(copiesOf),
  ];
}

function copiesOf(copies: readonly Named[]): Finding[] {
  const [first, ...others] = copies.toSorted(
    (one, two) =>
      two.visit.changes.length - one.visit.changes.length ||
      oddity(one) - oddity(two) ||
      one.name.length - two.name.length,
  );
  if (first === undefined) return [];
  return others.map(({ name, visit }) =>
    newerWords(visit) === null && goesOnFrom(first.visit, visit)
      ? curable(name, `is an earlier state, or a copy, of the visit in ${first.name}`, {
          do: 'set aside',
          id: visit.id,
        })
      : told(
          name,
          `holds the same visit as ${first.name}, and each has what the other has not`,
          'tussock join brings conflict copies of two notebooks together. Else move one of them elsewhere.',
        ),
  );
}

/** A file in its place and with a plain name stays before one that is not. */
function oddity({ name }: Named): number {
  return Number(!READ.test(name)) + Number(COPY_NAME.test(name));
}
