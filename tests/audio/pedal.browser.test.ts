import { describe, expect, it } from 'vitest';
import { songScore, timedScore } from '../../src/app/score.ts';
import { LIMITER_KNEE } from '../../src/audio/limiter.ts';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import type { AudioData } from '../../src/core/audioData.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { decodeShelfPattern } from '../../src/formats/patternFile.ts';
import { NO_COUNT_IN } from '../support/fakePlayback.ts';
import { section, slots, song, valueOf } from '../support/music.ts';
import { project } from '../support/project.ts';
import { difference, highestSample } from '../support/sound.ts';

const FILES = import.meta.glob<unknown>('../../patterns/*.json', {
  eager: true,
  import: 'default',
});

/** A figure, a pushed chord, and the densest there is; a bar lasts two seconds. */
const PEDALLED = ['alberti-bass', 'pushed-pop', 'sixteenth-arpeggio'].map(
  (name) => valueOf(decodeShelfPattern(FILES[`../../patterns/${name}.json`])).pattern,
);

const RATE = 48_000;

function timed(p: Pattern): readonly TimedNote[] {
  const verse = section('verse', { slots: slots('| C | F | G7 | C |'), patternId: p.id });
  const made = project({ song: song([verse], 'verse'), patterns: [p], practice: NO_COUNT_IN });
  const practice = { ...NO_COUNT_IN, click: { ...NO_COUNT_IN.click, on: false } };
  return timedScore(valueOf(songScore(made, undefined, 100)), practice, 0).notes;
}

/** Mean power of a stretch in dB below full scale. */
function levelDb({ channels }: AudioData, fromSec: number, toSec: number): number {
  let sum = 0;
  let count = 0;
  for (const channel of channels)
    for (const sample of channel.subarray(Math.round(fromSec * RATE), Math.round(toSec * RATE))) {
      sum += sample * sample;
      count++;
    }
  return 10 * Math.log10(sum / count + 1e-12);
}

describe.each(PEDALLED.map((p) => [p.name, p] as const))('%s with the pedal', (_, p) => {
  it('stays under the limiter’s knee at full volume, little louder than without', async () => {
    const { pedal: _pedal, ...dry } = p;
    const options = { sampleRate: RATE, durationSec: 8 };
    const wet = await renderOffline(timed(p), options);
    const plain = await renderOffline(timed(dry), options);
    expect(highestSample(wet)).toBeLessThan(LIMITER_KNEE);
    expect(levelDb(wet, 0, 8) - levelDb(plain, 0, 8)).toBeLessThan(4);
  });

  it('leaves nothing of the old chord 150 ms after the change', async () => {
    const notes = timed(p);
    const options = { sampleRate: RATE, durationSec: 8 };
    // A hit that anticipates belongs to the chord after the bar line.
    const old = notes.filter(({ startSec }) => startSec < 1.74);
    const whole = await renderOffline(notes, options);
    const others = await renderOffline(
      notes.filter((note) => !old.includes(note)),
      options,
    );
    const alone = difference(whole, others);
    const before = levelDb(alone, 1.5, 1.7);
    const after = levelDb(alone, 2.15, 2.25);
    expect(before - after).toBeGreaterThan(20);
  });
});
