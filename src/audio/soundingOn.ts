import type { SoundBank } from './loadSounds.ts';
import type { FramedNote } from './offlineWindow.ts';
import { soundOfNote } from './soundOfNote.ts';
import { ringsForSec } from './voice.ts';

/** A struck note, the first frame at which its sound is surely over, and what it is damped with. */
export type SoundingNote = FramedNote & {
  readonly endFrame: number;
  readonly dampGroup?: string;
};

/** Notes with the frames at which their sounds are over at the latest; `sounds` holds what they need. */
export function notesSoundingOn(
  notes: readonly FramedNote[],
  sounds: SoundBank,
  sampleRate: number,
): SoundingNote[] {
  return notes.map((framed) => {
    const sound = soundOfNote(framed.note);
    const buffer = sounds.get(sound.id);
    if (!buffer) throw new Error(`the sound ${sound.id} is not loaded`);
    const ringsSec = ringsForSec(buffer, sound, framed.note.durationSec);
    return {
      ...framed,
      endFrame: framed.atFrame + Math.ceil(ringsSec * sampleRate) + 1,
      ...(sound.dampGroup !== undefined && { dampGroup: sound.dampGroup }),
    };
  });
}

/**
 * Of notes that ascend, those struck before a frame whose sound may not be over by then, and those
 * that damped any of them: what is needed to sound on from that frame as if all had been struck.
 */
export function carriedNotes(notes: readonly SoundingNote[], frame: number): SoundingNote[] {
  const groups = new Set<string>();
  return notes.filter(({ atFrame, endFrame, dampGroup }) => {
    if (atFrame >= frame) return false;
    const isCarried = endFrame > frame || (dampGroup !== undefined && groups.has(dampGroup));
    if (isCarried && dampGroup !== undefined) groups.add(dampGroup);
    return isCarried;
  });
}
