import { Command } from 'commander';
import type { PlaceOptions } from './commands/places.ts';
import type { Shell } from './lists-commands.ts';

interface InNotebook {
  notebook?: string;
}

/** The commands about where and how far: `track` and `places`. */
export function groundCommands({ io, notebook, opened }: Shell): Command[] {
  const track = new Command('track')
    .description('take a recorded track (GPX) into a visit: its distance, and where entries were')
    .argument('<file>', 'a GPX file with times')
    .option('--visit <visit>', 'a visit file, or its name; else the latest that the track overlaps')
    .option('--replace', 'also in place of a distance that stands')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock track walk.gpx\n  tussock track walk.gpx --visit 2026-11-14-sallow-mere --replace\n',
    )
    .action(async (file: string, options: { visit?: string; replace?: boolean } & InNotebook) => {
      const { takeTrack } = await import('./commands/track.ts');
      const folder = await opened(options.notebook, false);
      process.exitCode = await takeTrack(folder, file, options, Date.now(), io);
    });

  const places = new Command('places')
    .description('show the places of the notebook, or set what is known of one')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock places\n  tussock places set "Sallow Mere" --position "ST 401 285"\n',
    )
    .action(async (options: InNotebook) => {
      const { listPlaces } = await import('./commands/places.ts');
      await listPlaces(await opened(options.notebook, false), io);
    });

  places
    .command('set')
    .description('set what is known of a place; the next visit there begins with it')
    .argument('<name>', 'of the place, visited or not')
    .option('--position <position>', 'degrees, geo: URI, MGRS, UTM, British or Irish grid; or none')
    .option('--uncertainty <metres>', 'within which the place surely lies; or none')
    .option('--habitat <words>', 'what grows or lies there; or none')
    .option('--protection <kind>', 'protected, private or none')
    .addOption(notebook())
    .addHelpText(
      'before',
      'For example:\n  tussock places set "Sallow Mere" --position "ST 401 285" --habitat "reedbed, open water"\n  tussock places set "Withy Lane" --protection private --uncertainty 50\n',
    )
    .action(async (name: string, { notebook: named, ...said }: PlaceOptions & InNotebook) => {
      const { setPlace } = await import('./commands/places.ts');
      await setPlace(() => opened(named, true), name, said, io);
    });
  return [track, places];
}
