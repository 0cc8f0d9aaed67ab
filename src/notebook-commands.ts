import { Command } from 'commander';
import type { Shell } from './lists-commands.ts';

interface InNotebook {
  notebook?: string;
}

/** The commands that look after the notebook itself: `check`, `states` and `remove`. */
export function notebookCommands({ io, notebook, opened }: Shell): Command[] {
  const check = new Command('check')
    .description('look through the whole notebook for what is not as it should be')
    .option('--mend', 'set aside what is broken or left over, and bring back the last good state')
    .addOption(notebook())
    .addHelpText('before', 'For example:\n  tussock check\n  tussock check --mend\n')
    .action(async (options: { mend?: boolean } & InNotebook) => {
      const { check } = await import('./commands/check.ts');
      process.exitCode = await check(
        await opened(options.notebook, false),
        options,
        Date.now(),
        io,
      );
    });

  const states = new Command('states')
    .description('show the earlier states of a visit that are kept, or bring one back')
    .argument('<visit>', 'a visit file, or its name in the notebook')
    .option('--bring-back <number>', 'make that state the visit again')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock states 2026-11-14-sallow-mere\n  tussock states 2026-11-14-sallow-mere --bring-back 1\n',
    )
    .action(async (visit: string, options: { bringBack?: string } & InNotebook) => {
      const { bringBack, listStates } = await import('./commands/states.ts');
      const folder = await opened(options.notebook, false);
      if (options.bringBack === undefined) await listStates(folder, visit, io);
      else await bringBack(folder, visit, options.bringBack, io);
    });

  const remove = new Command('remove')
    .description('take a visit out of the notebook; its file is set aside, never deleted')
    .argument('<visit>', 'a visit file, or its name in the notebook')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock remove 2026-11-14-sallow-mere\n  tussock remove 2026-11-14-visit-2 --notebook ~/notebook\n',
    )
    .action(async (visit: string, options: InNotebook) => {
      const { removeVisit } = await import('./commands/remove.ts');
      await removeVisit(await opened(options.notebook, false), visit, Date.now(), io);
    });
  return [check, states, remove];
}
