import { Command, Option } from 'commander';
import type { Shell } from './lists-commands.ts';
import type { Values } from './notebook/settings-keys.ts';

interface InNotebook {
  notebook?: string;
}

/** `--with KEY=VALUE`, as often as wanted: a setting for this run alone. */
export function withSetting(): Option {
  return new Option('--with <key=value>', 'a setting for this time only, such as units.wind=kn')
    .argParser((text: string, before: string[]) => [...before, text])
    .default([], '');
}

/** What `--with` asked for; without it nothing is loaded. */
export async function settingsAsked(texts: readonly string[]): Promise<Partial<Values>> {
  if (texts.length === 0) return {};
  const { askedSettings } = await import('./commands/settings.ts');
  return askedSettings(texts);
}

/** `tussock settings`: what is in force and where it comes from, and `set`. */
export function settingsCommand({ io, notebook, opened }: Shell): Command {
  const settings = new Command('settings')
    .description('show the settings in force, or set one')
    .addOption(withSetting())
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock settings\n  tussock settings set group-sizes 1,5,10\n',
    )
    .action(async (options: { with: string[] } & InNotebook) => {
      const { showSettings } = await import('./commands/settings.ts');
      const asked = await settingsAsked(options.with);
      process.exitCode = await showSettings(await opened(options.notebook, true), asked, io);
    });

  settings
    .command('set')
    .description('set one in settings.yaml; comments and all else in it stay')
    .argument('<key>', 'of the setting, as tussock settings shows it')
    .argument('<value...>', 'several with commas between them')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock settings set group-sizes 1,5,10\n  tussock settings set units.wind kn\n  tussock settings set lists by place\n',
    )
    .action(async (key: string, values: string[], options: InNotebook) => {
      const { setSetting } = await import('./commands/settings.ts');
      await setSetting(() => opened(options.notebook, true), key, values.join(' '), io);
    });
  return settings;
}
