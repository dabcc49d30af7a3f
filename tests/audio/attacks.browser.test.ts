import { describe, expect, it } from 'vitest';
import { CLICK_RECIPES } from '../../src/audio/clickSounds.ts';
import { PIANO_ZONES } from '../../src/audio/pianoSamples.ts';
import { renderOffline } from '../../src/audio/renderOffline.ts';
import { SYNTH_ZONES } from '../../src/audio/soundCatalogue.ts';
import { soundOfNote } from '../../src/audio/soundOfNote.ts';
import { KIT } from '../../src/audio/synth/drumSounds.ts';
import { drillTimeline } from '../../src/core/practice/drill.ts';
import { CLICK_SOUNDS, type ClickSound, clickTrack } from '../../src/core/rhythm/click.ts';
import { countIn } from '../../src/core/rhythm/countIn.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import { perform } from '../../src/core/rhythm/perform.ts';
import { steadyTempo } from '../../src/core/time/tempoMap.ts';
import { chord, meter } from '../support/music.ts';
import {
  attacksOf,
  difference,
  envelopeOf,
  highestSample,
  timedNote,
  worstMiss,
} from '../support/sound.ts';

const RATES = [44100, 48000];

/** A bar of count-in and two bars of click. */
function clicks(bpm: number, sound: ClickSound = 'tick'): TimedNote[] {
  const timeline = drillTimeline(chord('C'), meter('4/4'), 2);
  const manner = { beats: 'all', sound } as const;
  return perform(
    [...countIn(meter('4/4'), 1, { sound }), ...clickTrack(timeline, manner)],
    steadyTempo(bpm),
  );
}

/** Every stored sound once, 3 s apart and off the samples' grid. */
function everySound(): TimedNote[] {
  const strikes = [
    ...[30, 70, 100].flatMap((velocity) =>
      PIANO_ZONES.map((keyNumber) => ({ part: 'right', keyNumber, velocity }) as const),
    ),
    ...SYNTH_ZONES.bass.map((keyNumber) => ({ part: 'bass', keyNumber }) as const),
    ...SYNTH_ZONES.plucked.map((keyNumber) => ({ part: 'picking', keyNumber }) as const),
    ...SYNTH_ZONES.sung.map((keyNumber) => ({ part: 'sung', keyNumber }) as const),
    ...KIT.map((drum) => ({ part: 'percussion', keyNumber: drum.keys[0]! }) as const),
    ...CLICK_RECIPES.map(({ key }) => ({ part: 'click', keyNumber: key }) as const),
  ];
  return strikes.map(({ part, ...parts }, i) => timedNote(part, 0.5 + i * 3.0001234, parts));
}

describe.each(RATES)('at %i samples a second', (sampleRate) => {
  it('puts every click on its sample at every tempo from 40 to 240, the first included', async () => {
    const misses: Record<number, number> = {};
    for (let bpm = 40; bpm <= 240; bpm++) {
      const notes = clicks(bpm);
      const audio = await renderOffline(notes, { sampleRate, tailSec: 0.1 });
      const expected = notes.map((note) => (note.startSec + 240 / bpm) * sampleRate);
      const miss = worstMiss(attacksOf(audio.channels[0]!), expected);
      if (miss > 1) misses[bpm] = miss;
    }
    expect(misses).toEqual({});
  });

  it.each(CLICK_SOUNDS)('puts the click that is called %s on its samples too', async (sound) => {
    for (const bpm of [61, 97, 240]) {
      const notes = clicks(bpm, sound);
      const audio = await renderOffline(notes, { sampleRate, tailSec: 0.1 });
      const expected = notes.map((note) => (note.startSec + 240 / bpm) * sampleRate);
      expect(worstMiss(attacksOf(audio.channels[0]!), expected)).toBeLessThanOrEqual(1);
    }
  });

  it('begins every sound with its first sample, in exact silence', async () => {
    const notes = everySound();
    const audio = await renderOffline(notes, { sampleRate });
    const expected = notes.map((note) => Math.round(note.startSec * sampleRate));
    const attacks = attacksOf(envelopeOf(audio), 0, sampleRate / 10);
    const missed = notes
      .filter((_, i) => attacks[i] !== expected[i])
      .map((note) => soundOfNote(note).id);
    expect(attacks.length).toBe(notes.length);
    expect(missed).toEqual([]);
  });
});

it('shares nothing between two notes: each sounds alone as it sounds beside the other', async () => {
  const low = timedNote('left', 0.1, { keyNumber: 40 });
  const high = timedNote('right', 0.1001, { keyNumber: 76 });
  const options = { durationSec: 1 };
  const [together, first, second] = await Promise.all(
    [[low, high], [low], [high]].map((notes) => renderOffline(notes, options)),
  );
  const rest = difference(difference(together!, first!), second!);
  expect(highestSample(first!)).toBeGreaterThan(0.01);
  expect(highestSample(rest)).toBeLessThan(1e-6);
});

it('lets a piano note rise to a tenth of its height within 6 ms', async () => {
  const slow: string[] = [];
  for (const velocity of [30, 70, 100])
    for (const keyNumber of PIANO_ZONES) {
      const note = timedNote('right', 0, { keyNumber, velocity });
      const audio = await renderOffline([note], { durationSec: 0.2 });
      const tenth = highestSample(audio) / 10;
      const risenSec = envelopeOf(audio).findIndex((x) => x > tenth) / audio.sampleRate;
      if (risenSec > 0.006) slow.push(`${soundOfNote(note).id}: ${risenSec}`);
    }
  expect(slow).toEqual([]);
});
