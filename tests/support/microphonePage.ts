import { startAudio } from '../../src/audio/context.ts';
import { openMicrophone } from '../../src/audio/microphone.ts';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { encodeWav } from '../../src/formats/wav.ts';
import { microphoneOnsets } from '../../src/input/microphoneInput.ts';
import { valueOf } from './music.ts';

/** What the test of the microphone does inside the browser. */
export type MicrophonePage = {
  /** The notes as the app's own piano sounds them: a WAV file of one channel at 48 kHz, in base64. */
  readonly pianoWav: (notes: readonly TimedNote[]) => Promise<string>;
  /** When the microphone hears something within so many milliseconds. */
  readonly heardFor: (milliseconds: number) => Promise<Seconds[]>;
};

declare global {
  interface Window {
    microphonePage?: MicrophonePage;
  }
}

async function pianoWav(notes: readonly TimedNote[]): Promise<string> {
  const { channels, sampleRate } = await renderOffline(notes, { sampleRate: 48000, startSec: 0 });
  const mono = channels[0]!.map((x, i) => 0.4 * (x + channels[1]![i]!));
  const bytes = encodeWav({ channels: [mono], sampleRate }, 16);
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192)
    text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
}

async function heardFor(milliseconds: number): Promise<Seconds[]> {
  const room = valueOf(await startAudio());
  const microphone = valueOf(await openMicrophone(room));
  const hits: Seconds[] = [];
  const stop = valueOf(
    await microphoneOnsets(microphone)({
      outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
      latencySec: 0,
      onHit: ({ atSec }) => hits.push(atSec),
    }),
  );
  await new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
  stop();
  microphone.close();
  await room.context.close();
  return hits;
}

window.microphonePage = { pianoWav, heardFor };
