import { type AudioError, type AudioRoom, startAudio } from '../audio/context.ts';
import { createInstruments, type Instruments } from '../audio/instruments.ts';
import { createPlayer } from '../audio/player.ts';
import type { SoundsAhead } from '../audio/soundsAhead.ts';
import { err, ok, type Result, unreachable } from '../core/result.ts';
import type { Sound } from './playback.ts';

/** Why there is no sound. */
type NoSound = { readonly reason: string };

/** Why there is no sound, in the browser's words where it gave some. */
function reasonOf(error: AudioError): string {
  switch (error.kind) {
    case 'no-web-audio':
      return 'it has no Web Audio';
    case 'needs-gesture':
      return 'it waits for a tap or a key';
    case 'refused':
      return error.text;
    default:
      return unreachable(error);
  }
}

/** The instruments in a room; without them the room is closed again. */
async function instrumentsIn(
  { context }: AudioRoom,
  soundsAt: SoundsAhead['at'] | undefined,
): Promise<Result<Instruments, NoSound>> {
  try {
    return ok(await createInstruments(context, soundsAt?.(context)));
  } catch (error) {
    await context.close();
    return err({ reason: `its sounds could not be loaded: ${String(error)}` });
  }
}

/** The sound of a page, and what makes it. */
export type OpenSound = Sound & { readonly room: AudioRoom; readonly instruments: Instruments };

async function newSound(
  soundsAt: SoundsAhead['at'] | undefined,
): Promise<Result<OpenSound, NoSound>> {
  const room = await startAudio();
  if (!room.ok) return err({ reason: reasonOf(room.error) });
  const instruments = await instrumentsIn(room.value, soundsAt);
  if (!instruments.ok) return instruments;
  return ok({
    player: createPlayer(room.value, instruments.value),
    setLevels: (levels) => instruments.value.setLevels(levels),
    resume: () => room.value.resume(),
    onInterrupted: (listener) => room.value.onInterrupted(listener),
    room: room.value,
    instruments: instruments.value,
  });
}

/**
 * Opens the sound of this page at its first call, during a tap, click or key press, and gives the
 * same sound from then on. A failure is not kept: the next call tries again. `soundsAt` gives the
 * sounds for its context, which are loaded now without it.
 */
export function soundOpener(
  soundsAt?: SoundsAhead['at'],
): () => Promise<Result<OpenSound, NoSound>> {
  let opened: Promise<Result<OpenSound, NoSound>> | undefined;
  return async () => {
    opened ??= newSound(soundsAt);
    const sound = await opened;
    if (sound.ok) await sound.value.resume();
    else opened = undefined;
    return sound;
  };
}
