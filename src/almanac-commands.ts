import { Command } from 'commander';
import type { AlmanacOptions } from './commands/almanac.ts';
import type { Shell } from './lists-commands.ts';

/** The commands that look back, and the invented notebook to try them in: `almanac` and `demo`. */
export function almanacCommands({ io, notebook, opened }: Shell): Command[] {
  const almanac = new Command('almanac')
    .description('ask the notebook in words: a species, a place, a year, a month, a category')
    .argument('[words...]', 'such as tern may, first 2025, threatened, unnamed; none for this week')
    .option('--figures', 'with richness, diversity, estimates and rates, and their cautions')
    .option('--json', 'the same as data')
    .option('--width <columns>', 'how wide the lines may be; else as wide as the terminal')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock almanac\n  tussock almanac tern may\n  tussock almanac sallow 2025 threatened\n  tussock almanac birds 2025 --figures\n',
    )
    .action(async (words: string[], options: AlmanacOptions & { notebook?: string }) => {
      const { askAlmanac } = await import('./commands/almanac.ts');
      const moment = {
        now: Date.now(),
        timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        columns: process.stdout.columns || null,
      };
      const notebookIn = () => opened(options.notebook, false);
      process.exitCode = await askAlmanac(notebookIn, words.join(' '), options, moment, io);
    });

  const demo = new Command('demo')
    .description('make an invented notebook to try, and open the Field screen on it')
    .option('--folder <dir>', 'where; else a new folder among the temporary files')
    .addHelpText(
      'before',
      'For example:\n  tussock demo\n  tussock demo --folder /tmp/invented > where.txt    (no terminal: it is only made)\n',
    )
    .action(async (options: { folder?: string }) => {
      const { makeDemo } = await import('./commands/demo.ts');
      const folder = await makeDemo(options.folder, io);
      if (!process.stdout.isTTY) return;
      const { fieldScreen } = await import('./commands/field-screen.tsx');
      process.exitCode = await fieldScreen(async () => folder, {});
    });
  return [almanac, demo];
}
