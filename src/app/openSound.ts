import { type AudioError, startAudio } from '../audio/context.ts';
import { createInstruments } from '../audio/instruments.ts';
import { createPlayer } from '../audio/player.ts';
import { ok, type Result, unreachable } from '../core/result.ts';
import type { Sound } from './playback.ts';

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

async function newSound(): Promise<Result<Sound, { readonly reason: string }>> {
  const room = await startAudio();
  if (!room.ok) return { ok: false, error: { reason: reasonOf(room.error) } };
  const instruments = await createInstruments(room.value.context);
  return ok({
    player: createPlayer(room.value, instruments),
    setLevels: (levels) => instruments.setLevels(levels),
    resume: () => room.value.resume(),
  });
}

/**
 * Opens the sound of this page at its first call, during a tap, click or key press, and gives the
 * same sound from then on. A failure is not kept: the next call tries again.
 */
export function soundOpener(): () => Promise<Result<Sound, { readonly reason: string }>> {
  let opened: Promise<Result<Sound, { readonly reason: string }>> | undefined;
  return async () => {
    opened ??= newSound();
    const sound = await opened;
    if (sound.ok) await sound.value.resume();
    else opened = undefined;
    return sound;
  };
}
