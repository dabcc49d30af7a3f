import type { TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { loadSounds, type SoundBank } from './loadSounds.ts';
import { createMix, type Levels, type Mix, QUIET_LEVELS } from './mix.ts';
import { STORED_SOUNDS } from './soundCatalogue.ts';
import { soundOfNote } from './soundOfNote.ts';
import { createStage, type OutputStage, SILENT_AFTER_SEC } from './stage.ts';
import { type StruckVoice, startVoice, type Voice } from './voice.ts';

/** What plays notes: piano for both hands, the band, the click, set together and limited. */
export type Instruments = {
  /**
   * Sounds a note from `atSec` on, a time of the context, to the nearest sample; at once, if that
   * is past. The note's own start does not matter. It ends after its duration, drums and clicks
   * when they have rung out.
   */
  strike(note: TimedNote, atSec: Seconds): Voice;
  /**
   * Ends whatever sounds and takes back whatever was struck for later: silence within 20 ms of
   * `atSec` (of now, if that is past), faded. Notes struck after this call sound.
   */
  silence(atSec: Seconds): void;
  /** What is struck from `atSec` on begins quietly and rises to full in a second. Call it in silence. */
  startQuietly(atSec: Seconds): void;
  /** Glides to new levels without a jump. */
  setLevels(levels: Levels): void;
  /** Silences everything and frees what was made. Nothing may be struck afterwards. */
  dispose(): void;
};

/** The voices of one stage, and those of each damp group that were struck last. */
type Playing = {
  readonly stage: OutputStage;
  readonly voices: Set<StruckVoice>;
  readonly groups: Map<string, StruckVoice[]>;
};

function newPlaying(context: BaseAudioContext, mix: Mix): Playing {
  return { stage: createStage(context, mix), voices: new Set(), groups: new Map() };
}

/** A strike damps those before it in its group; what is struck at the same moment sounds together. */
function joinGroup(groups: Playing['groups'], name: string, voice: StruckVoice): void {
  const members = groups.get(name) ?? [];
  const together = members.filter((member) => member.startSec >= voice.startSec);
  for (const member of members)
    if (member.startSec < voice.startSec) member.release(voice.startSec);
  groups.set(name, [...together, voice]);
}

/** Stops every voice of a stage that fades, and calls `whenSilent` once the last has ended. */
function stopVoices(voices: Playing['voices'], stopSec: Seconds, whenSilent: () => void): void {
  if (voices.size === 0) return whenSilent();
  for (const voice of voices) {
    voice.stopAt(stopSec);
    voice.onEnded(() => {
      if (voices.size === 0) whenSilent();
    });
  }
}

/** The instruments over sounds that are loaded already; `sounds` must hold what is struck. */
export function instrumentsOf(
  context: BaseAudioContext,
  sounds: SoundBank,
  levels: Levels,
): Instruments {
  const mix = createMix(context, levels);
  let playing = newPlaying(context, mix);

  function silence(atSec: Seconds, whenSilent = () => {}): void {
    const { stage, voices } = playing;
    playing = newPlaying(context, mix);
    const fromSec = Math.max(atSec, context.currentTime);
    stage.fadeOut(fromSec);
    stopVoices(voices, fromSec + SILENT_AFTER_SEC, () => {
      stage.disconnect();
      whenSilent();
    });
  }

  return {
    strike(note, atSec) {
      const { stage, voices, groups } = playing;
      const sound = soundOfNote(note);
      const buffer = sounds.get(sound.id);
      if (!buffer) throw new Error(`the sound ${sound.id} is not loaded`);
      const voice = startVoice(buffer, sound, stage.inputs[sound.bus], atSec, note.durationSec);
      voices.add(voice);
      voice.onEnded(() => voices.delete(voice));
      if (sound.dampGroup !== undefined) joinGroup(groups, sound.dampGroup, voice);
      return voice;
    },
    silence: (atSec) => silence(atSec),
    startQuietly: (atSec) => playing.stage.riseFrom(atSec),
    setLevels: (next) => mix.setLevels(next),
    dispose() {
      silence(context.currentTime, () => mix.dispose());
      playing.stage.disconnect();
    },
  };
}

/**
 * Builds the instruments in the given context, live or offline, at `QUIET_LEVELS`, over every sound:
 * the given ones, or loaded now, which takes about a second. Rejects where a sound file cannot be
 * fetched or decoded.
 */
export async function createInstruments(
  context: BaseAudioContext,
  sounds: Promise<SoundBank> = loadSounds(context, STORED_SOUNDS),
): Promise<Instruments> {
  return instrumentsOf(context, await sounds, QUIET_LEVELS);
}
