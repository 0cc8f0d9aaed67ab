import type { Known } from '../../taxa/known.ts';
import { categoryLetters, isThreatened } from '../../taxa/red-list.ts';
import type { Hit } from '../../taxa/search.ts';
import { countShown } from '../../visit/count.ts';
import { isSpecies, nameOf, taxonKey, taxonName } from '../../visit/entry.ts';
import { countOf, readEntryLine } from '../../visit/entry-line.ts';
import { placeKey } from '../../visit/place.ts';
import { cell, cut, type Row, span } from '../paint.ts';
import { type Choice, choicesOf } from './choices.ts';
import { dateWords } from './head.ts';
import { keyWords } from './keymap.ts';
import { type Session, typedLine } from './session.ts';

/** The suggestions under the line, at most `most` rows, with the chosen one always among them. */
export function choiceRows(session: Session, width: number, most: number): Row[] {
  const choices = choicesOf(session);
  const from = Math.max(0, Math.min(session.chosen - most + 1, choices.length - most));
  return choices.slice(from, from + most).map((choice, index) => {
    const chosen = from + index === session.chosen;
    const text = `${chosen ? '>' : ' '} ${choiceText(session, choice, chosen, width - 2)}`;
    const threatened = choice.kind === 'taxon' && isThreatened(choice.hit.taxon.redListCategory);
    return [span(cell(text, width), chosen ? 'chosen' : threatened ? 'threat' : 'plain')];
  });
}

function choiceText(session: Session, choice: Choice, chosen: boolean, width: number): string {
  switch (choice.kind) {
    case 'taxon':
      return taxonText(session, choice.hit, chosen, width);
    case 'words':
      return cut(
        `${countCell(session, chosen, false, width)} "${choice.words}" in your words, to be named later`,
        width,
      );
    case 'stands':
      return cut(
        `${countCell(session, chosen, false, width)} ${nameOf(choice.entry)}, named as it stands`,
        width,
      );
    case 'place':
      return cut(
        `${cell(choice.place.name, 30)} ${visitsWords(choice.visits, choice.last)}`,
        width,
      );
    case 'action':
      return cut(
        `/${cell(choice.binding.action, 12)} ${choice.binding.words} (Esc ${keyWords(choice.binding.key)})`,
        width,
      );
  }
}

function visitsWords(visits: number, last: string): string {
  if (visits === 0) return 'no visit yet';
  return `${visits} ${visits === 1 ? 'visit' : 'visits'}, last ${dateWords(last, 'long')}`;
}

/** Count, names, category, and what this notebook knows of it here. */
function taxonText(session: Session, hit: Hit, chosen: boolean, width: number): string {
  const { taxon } = hit;
  const name = taxonName(taxon);
  const also =
    hit.matched === name || hit.matched === taxon.scientificName || !isSpecies(taxon)
      ? ''
      : ` (${hit.matched})`;
  const narrow = width < NARROW;
  const scientific = narrow ? shortGenus(taxonKey(taxon)) : taxonKey(taxon);
  const scientificWidth = narrow ? 14 : Math.min(26, Math.floor(width * 0.27));
  const nameWidth = Math.max(14, Math.min(34, Math.floor(width * 0.35)));
  return cut(
    [
      countCell(session, chosen, taxon.countedSingly, width),
      cell(name + also, nameWidth),
      cell(scientific, scientificWidth),
      cell(categoryLetters(taxon), 4),
      knownWords(session, taxonKey(taxon)),
    ].join(' '),
    width,
  );
}

const NARROW = 68;

/** `A. fuligula` for Aythya fuligula, where room is short. */
function shortGenus(scientificName: string): string {
  const [genus = '', ...rest] = scientificName.split(' ');
  return rest.length === 0 ? genus : `${genus.slice(0, 1)}. ${rest.join(' ')}`;
}

function countCell(
  session: Session,
  chosen: boolean,
  countedSingly: boolean,
  width: number,
): string {
  return cell(chosen ? countWords(session, countedSingly) : '', width < NARROW ? 5 : 7, 'right');
}

function countWords(session: Session, countedSingly: boolean): string {
  const count = countOf(readEntryLine(typedLine(session).text), countedSingly);
  return countShown(count);
}

function knownWords({ known, visit }: Session, key: string): string {
  if (!known) return '';
  const taxon = known.taxa.get(key);
  const here = visit.place ? taxon?.here.get(placeKey(visit.place.name)) : undefined;
  if (here) return `${here.visits}x here, ${lastWords(here.last, visit.start)}`;
  if (!taxon) return loggedToday(visit, key) ? 'today' : known.visits === 0 ? '' : 'new';
  return `${visit.place ? 'new here, ' : ''}${lastWords(taxon.last, visit.start)}`;
}

function loggedToday(visit: Session['visit'], key: string): boolean {
  return visit.entries.some(
    ({ struck, taxon }) => struck === null && taxon !== null && taxonKey(taxon) === key,
  );
}

/** The last date, with its year when it is not this one. */
function lastWords(date: string, today: string): string {
  const day = dateWords(date, 'short');
  return date.slice(0, 4) === today.slice(0, 4) ? day : `${day} ${date.slice(0, 4)}`;
}

/** What the notebook holds, for the empty line. */
export function notebookWords(known: Known | null): string {
  if (known === null) return 'reading the notebook';
  return known.visits === 0
    ? 'a new notebook'
    : `${known.visits} earlier ${known.visits === 1 ? 'visit' : 'visits'}`;
}
