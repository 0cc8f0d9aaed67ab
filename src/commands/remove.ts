import { relative } from 'node:path';
import { reasonWords } from '../notebook/reason.ts';
import { setAside } from '../notebook/set-aside.ts';
import { readVisit } from '../notebook/visit-file.ts';
import { alone, refuseForeign } from './alone.ts';
import { fileNamed } from './named-visit.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Takes a visit out of the notebook: its file moves to `set-aside/`. Nothing is deleted. */
export async function removeVisit(
  notebook: string,
  file: string,
  now: number,
  io: { answer(line: string): void },
): Promise<void> {
  const path = await fileNamed(notebook, file);
  await refuseForeign(notebook, path);
  const read = await readVisit(path);
  const move = () =>
    setAside(notebook, path, now).catch((error: unknown) => {
      throw new Refusal(EXIT.notebook, `${path} could not be moved: ${reasonWords(error)}.`);
    });
  const to = 'visit' in read ? await alone(notebook, read.visit, move) : await move();
  io.answer(
    `${relative(notebook, path)} is out of the notebook; it stands in ${to}. Move it back to have it again.`,
  );
}
