import { Command, CommanderError, Option } from 'commander';
import { almanacCommands } from './almanac-commands.ts';
import { EXIT, Refusal } from './commands/refusal.ts';
import { exportCommand } from './export-commands.ts';
import { groundCommands } from './ground-commands.ts';
import { listsCommand } from './lists-commands.ts';
import { notebookFolder, openNotebook } from './notebook/notebook.ts';
import { notebookCommands } from './notebook-commands.ts';
import { reportCommand } from './report-commands.ts';
import { harmless } from './screens/paint.ts';
import { settingsAsked, settingsCommand, withSetting } from './settings-commands.ts';

declare const TUSSOCK_VERSION: string;

interface FieldOptions {
  place?: string;
  when?: string;
  stdin?: boolean;
  with: string[];
  notebook?: string;
}

const complain = (line: string) => process.stderr.write(`tussock: ${harmless(line)}\n`);

const answer = (line: string) => process.stdout.write(`${harmless(line)}\n`);

/** Waits until it is written; false when the pipe is closed or the terminal gone. */
const write = (text: string) =>
  new Promise<boolean>((resolve) => {
    process.stdout.write(text, (error) => resolve(!error));
  });

async function opened(option: string | undefined, make: boolean): Promise<string> {
  const folder = notebookFolder(option, process.env);
  const problem = await openNotebook(folder, make);
  if (problem !== null) throw new Refusal(EXIT.notebook, problem);
  return folder;
}

function program(first: string | undefined): Command {
  const tussock = new Command('tussock')
    .description('A field log for people who notice plants and animals.')
    .usage('[command] [options]')
    .version(TUSSOCK_VERSION, '--version')
    .exitOverride()
    .configureOutput({
      outputError: (text) =>
        complain(
          text
            .replace(/^error: /, '')
            .trim()
            .replaceAll('\n', ' ')
            .concat(' See tussock --help.'),
        ),
    })
    .showSuggestionAfterError(true)
    .addHelpText(
      'before',
      'For example:\n  tussock                        open the Field screen and type\n  tussock export --last > walk.csv\n',
    )
    .addHelpText(
      'afterAll',
      "\nExit codes: 0 done, 1 some input not taken, 2 wrong usage, 3 the notebook can't be used.",
    );
  const notebook = () =>
    new Option('--notebook <dir>', 'the notebook folder (also TUSSOCK_NOTEBOOK)');

  tussock
    // A first word that is no command is a misspelt one: the default would hide which was meant.
    .command('field', { isDefault: first === undefined || first.startsWith('-') })
    .description('log a visit: the Field screen, or lines from standard input')
    .option(
      '--place <name>',
      'where; with decimal degrees if you know them: "Sallow Mere 51.12, -2.85"',
    )
    .option('--when <time>', 'when it began, for a visit that is typed in later: "yesterday 07:40"')
    .option('--stdin', 'read entry lines from standard input, one a line, and answer one line each')
    .addOption(withSetting())
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock field --place "Sallow Mere 51.12, -2.85"\n  tussock field --stdin < lines.txt    (so too where TERM is dumb)\n',
    )
    .action(async (options: FieldOptions) => {
      const notebookIn = () => opened(options.notebook, true);
      const asked = await settingsAsked(options.with);
      if (options.stdin || process.env.TERM === 'dumb') {
        const { fieldLines } = await import('./commands/field-lines.ts');
        const io = { input: process.stdin, answer, complain };
        process.exitCode = await fieldLines(notebookIn, options, io, asked);
      } else {
        const { fieldScreen } = await import('./commands/field-screen.tsx');
        process.exitCode = await fieldScreen(notebookIn, options, asked);
      }
    });

  const io = { answer, complain };
  tussock.addCommand(exportCommand({ io, notebook, opened, write }));
  tussock.addCommand(reportCommand({ io, notebook, opened, write }));
  tussock.addCommand(listsCommand({ io, notebook, opened }));
  tussock.addCommand(settingsCommand({ io, notebook, opened }));
  for (const command of almanacCommands({ io, notebook, opened })) tussock.addCommand(command);
  for (const command of notebookCommands({ io, notebook, opened })) tussock.addCommand(command);
  for (const command of groundCommands({ io, notebook, opened })) tussock.addCommand(command);
  tussock
    .command('join')
    .description('bring the visits of another copy of the notebook into this one')
    .argument('<other>', 'the folder of the other copy; it is only read')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock join /media/stick/notebook\n  tussock join ../tablet --notebook ~/notebook\n',
    )
    .action(async (other: string, options: { notebook?: string }) => {
      const { joinNotebook } = await import('./commands/join.ts');
      process.exitCode = await joinNotebook(await opened(options.notebook, true), other, io);
    });
  // Where both have the option, a command takes it from the command within it, wherever it stands.
  tussock.hook('preAction', (_, command) => {
    const named = command.parent?.opts().notebook;
    if (named !== undefined) command.setOptionValue('notebook', named);
  });
  settle(tussock);
  return tussock;
}

/** Every command, and every command of a command, answers as the program does. */
function settle(parent: Command): void {
  for (const command of parent.commands) {
    command.exitOverride().copyInheritedSettings(parent);
    settle(command);
  }
}

async function run(): Promise<void> {
  try {
    await program(process.argv[2]).parseAsync(process.argv);
  } catch (error) {
    if (error instanceof CommanderError)
      process.exitCode = error.exitCode === 0 ? EXIT.done : EXIT.usage;
    else if (error instanceof Refusal) {
      complain(error.message);
      process.exitCode = error.code;
    } else {
      complain(
        `something went wrong inside the program: ${error instanceof Error ? error.message : String(error)}`,
      );
      process.exitCode = EXIT.notebook;
    }
  }
}

// Written to a pipe that closed early (`| head`), or to a terminal that is gone: that is no fault.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE' && error.code !== 'EIO') throw error;
  });
await run();
