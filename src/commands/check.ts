import { checkNotebook } from '../notebook/check.ts';
import { type Finding, told } from '../notebook/finding.ts';
import { mend } from '../notebook/mend.ts';
import { reasonWords } from '../notebook/reason.ts';
import { ownLists } from './lists-in-use.ts';
import { EXIT, Refusal } from './refusal.ts';

interface Answers {
  answer(line: string): void;
}

/**
 * Looks through the whole notebook and tells one finding a line; with `mend` it first does what can be
 * done without losing anything. Returns the exit code: 1 where a fault is left.
 */
export async function check(
  notebook: string,
  options: { mend?: boolean },
  now: number,
  io: Answers,
): Promise<number> {
  if (options.mend === true)
    for (const finding of await findingsIn(notebook, now))
      if (finding.cure !== null) io.answer(await mend(notebook, finding, now));
  const left = await findingsIn(notebook, now);
  for (const finding of left) io.answer(line(finding));
  io.answer(summary(left));
  return left.some(({ fault }) => fault) ? EXIT.notTaken : EXIT.done;
}

async function findingsIn(notebook: string, now: number): Promise<Finding[]> {
  try {
    const { problems } = await ownLists(notebook);
    const lists = problems.map((problem) => {
      const words = problem.replace(notebook, '').replace(/^[/\\]/, '');
      const at = words.indexOf(" can't be read");
      return told(words.slice(0, at), words.slice(at + 1), '');
    });
    return [...(await checkNotebook(notebook, now)), ...lists];
  } catch (error) {
    throw new Refusal(
      EXIT.notebook,
      `The notebook ${notebook} can't be looked through: ${reasonWords(error)}.`,
    );
  }
}

function line({ path, what, advice, fault }: Finding): string {
  const sentence = /[.!?]$/.test(what) ? what : `${what}.`;
  const look = fault ? '' : 'worth a look: ';
  return `${path}: ${look}${sentence}${advice === '' ? '' : ` ${advice}`}`;
}

function summary(findings: readonly Finding[]): string {
  const faults = findings.filter(({ fault }) => fault).length;
  const looks = findings.length - faults;
  const noted = looks === 0 ? '' : `, ${looks} worth a look`;
  if (faults > 0) return `${faults} ${faults === 1 ? 'fault' : 'faults'}${noted}.`;
  return looks === 0 ? 'The notebook is whole.' : `No fault${noted}.`;
}
