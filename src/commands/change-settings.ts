import { reasonWords } from '../notebook/reason.ts';
import { changeSettings, faultsTold, type SettingsRead } from '../notebook/settings.ts';
import type { Values } from '../notebook/settings-keys.ts';
import { EXIT, Refusal } from './refusal.ts';

/** Changes the notebook's file. Refuses where it can't be read as a whole: it is never written over. */
export async function changeOrRefuse(
  notebook: string,
  read: SettingsRead,
  changes: Partial<Values>,
): Promise<void> {
  const [fault] = faultsTold(read);
  if (!read.whole) throw new Refusal(EXIT.notebook, fault ?? `${read.path} can't be read.`);
  await changeSettings(notebook, changes).catch((error: unknown) => {
    throw new Refusal(EXIT.notebook, `${read.path} can't be written: ${reasonWords(error)}.`);
  });
}
