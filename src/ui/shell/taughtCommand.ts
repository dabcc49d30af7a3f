import type { MidiCommand } from '../../app/midiCommands.ts';
import type { PlaybackState } from '../../app/playbackState.ts';
import type { Page } from '../parts/tool/viewState.ts';
import type { KeyCommand } from './keyBindings.ts';

const STEPS = { on: 1, start: 0, back: -1 } as const;

/**
 * What a taught command does on a page: what leads on or back moves along the ladder while a drill
 * plays, along the form while the song does, and at rest along that of the page; undefined where there
 * is neither.
 */
export function commandOfTaught(
  taught: MidiCommand,
  playing: PlaybackState,
  page: Page,
): KeyCommand | undefined {
  if (taught !== 'on' && taught !== 'back' && taught !== 'start') return { kind: taught };
  const by = STEPS[taught];
  const played = playing.status === 'stopped' ? undefined : playing.request.kind;
  if (played === 'drill' || (!played && page === 'drill')) return { kind: 'rung', by };
  return played === 'song' || (!played && page === 'play') ? { kind: 'section', by } : undefined;
}
