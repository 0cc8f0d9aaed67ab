import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import { createDurably, isCode, replaceDurably } from './durable-file.ts';
import { reasonWords } from './reason.ts';

/** Tags are the same in any case (RFC 5646, section 2.1.1). */
const Language = z
  .string()
  .toLowerCase()
  .regex(/^[a-z]{2,3}(-[a-z0-9]+)*$/, 'not a language tag such as en or cy');

/** What the user chose for a notebook: its `settings.json`. Fields that this version does not know are kept. */
export const Settings = z.looseObject({
  format: z.literal('tussock-settings'),
  formatVersion: z.literal(1),
  /** Names of the species lists in use; null: those for the region of the place, and all own ones. */
  lists: z.array(z.string()).nullable(),
  languages: z.looseObject({ shown: Language, searched: z.array(Language) }),
});
export type Settings = z.infer<typeof Settings>;

const NEW_SETTINGS: Settings = {
  format: 'tussock-settings',
  formatVersion: 1,
  lists: null,
  languages: { shown: 'en', searched: ['en'] },
};

/** Some editors put it before the text. */
const BYTE_ORDER_MARK = /^\ufeff/;

function settingsPath(notebook: string): string {
  return join(notebook, 'settings.json');
}

/** The settings of a notebook; where they can't be read, what they usually are and a sentence. */
export async function readSettings(
  notebook: string,
): Promise<{ settings: Settings; problem: string | null }> {
  const path = settingsPath(notebook);
  const usual = (why: string) => ({
    settings: NEW_SETTINGS,
    problem: `${path} can't be read (${why}). The usual settings are used; mend it or move it away.`,
  });
  try {
    const read = Settings.safeParse(
      JSON.parse((await readFile(path, 'utf8')).replace(BYTE_ORDER_MARK, '')),
    );
    if (read.success) return { settings: read.data, problem: null };
    const issue = read.error.issues[0];
    return usual(`at ${issue?.path.join('.') || 'its start'}: ${issue?.message}`);
  } catch (error) {
    if (isCode(error, 'ENOENT')) return { settings: NEW_SETTINGS, problem: null };
    return usual(reasonWords(error));
  }
}

/** Writes the settings durably. Rejects with the system's error. */
export async function writeSettings(notebook: string, settings: Settings): Promise<void> {
  const path = settingsPath(notebook);
  const text = `${JSON.stringify(settings, null, 2)}\n`;
  if (!(await createDurably(path, text))) await replaceDurably(path, text);
}
