import { Command, type Option } from 'commander';
import type { AddOptions } from './commands/lists-add.ts';

/** What the commands are handed: where to speak, the notebook folder, and its option. */
export interface Shell {
  io: { answer(line: string): void; complain(line: string): void };
  notebook(): Option;
  opened(option: string | undefined, make: boolean): Promise<string>;
}

interface InNotebook {
  notebook?: string;
}

/** `tussock lists` and what can be done to species lists. */
export function listsCommand({ io, notebook, opened }: Shell): Command {
  const lists = new Command('lists')
    .description('show the species lists, or add, check and choose them')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock lists\n  tussock lists add moths.csv --columns "Latin=scientificName,English=vernacularName"\n',
    )
    .action(async (options: InNotebook) => {
      const { showLists } = await import('./commands/lists.ts');
      const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
      await showLists(await opened(options.notebook, true), timeZone, io);
    });

  lists
    .command('add')
    .description('add a list of your own from a table (CSV; semicolons and tabs too)')
    .argument('<file>', 'a table with a column scientificName')
    .option('--name <name>', 'what the list is called; else the name of the file')
    .option('--region <region>', 'where it holds')
    .option('--group <group>', 'of what, such as moths')
    .option(
      '--columns <pairs>',
      'what its columns mean: "Latin=scientificName,English=vernacularName"',
    )
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock lists add moths.csv --group moths\n  tussock lists add birds-of-the-world.txt --columns "English=vernacularName"\n',
    )
    .action(async (file: string, options: AddOptions & InNotebook) => {
      const { addList } = await import('./commands/lists-add.ts');
      process.exitCode = await addList(await opened(options.notebook, true), file, options, io);
    });

  lists
    .command('check')
    .description('check tables as species lists; without any, the lists that ship with the program')
    .argument('[files...]')
    .addHelpText('before', 'For example:\n  tussock lists check\n  tussock lists check moths.csv\n')
    .action(async (files: string[]) => {
      const { checkLists } = await import('./commands/lists.ts');
      process.exitCode = await checkLists(files, io);
    });

  lists
    .command('use')
    .description('choose the lists in use; without a name, the place decides again')
    .argument('[names...]', 'lists, or regions for all of theirs')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock lists use britain-ireland own-moths\n  tussock lists use\n',
    )
    .action(async (names: string[], options: InNotebook) => {
      const { chooseLists } = await import('./commands/lists.ts');
      await chooseLists(await opened(options.notebook, true), names, io);
    });

  lists
    .command('languages')
    .description('choose in which languages names are shown and searched')
    .option('--shown <tag>', 'such as en or cy')
    .option('--searched <tags>', 'such as en,cy')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock lists languages --shown cy --searched cy,en\n  tussock lists languages --shown en --searched en\n',
    )
    .action(async (options: { shown?: string; searched?: string } & InNotebook) => {
      const { chooseLanguages } = await import('./commands/lists.ts');
      await chooseLanguages(await opened(options.notebook, true), options, io);
    });
  return lists;
}
