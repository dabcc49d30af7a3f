import { describe, expect, it } from 'vitest';
import { chordTones } from '../../../src/core/harmony/chord.ts';
import { formatChordSymbol } from '../../../src/core/harmony/chordSymbol.ts';
import { type Key, MODES } from '../../../src/core/harmony/key.ts';
import { chromaOf, formatPitchClass } from '../../../src/core/harmony/pitch.ts';
import { chordInKey, scaleChordOf } from '../../../src/core/harmony/scaleDegree.ts';
import type { BandNote } from '../../../src/core/rhythm/band.ts';
import { bandMap } from '../../../src/core/rhythm/bandSong.ts';
import { songOfMap } from '../../../src/core/rhythm/mappedSong.ts';
import { formatChart, parseChart } from '../../../src/core/song/chart.ts';
import type { ChordSlot } from '../../../src/core/song/song.ts';
import { bandNote, bandOf, bandTrack, times } from '../../support/bands.ts';
import { meter, valueOf } from '../../support/music.ts';

const ROLES = ['bass', 'strumming', 'sung', 'drums'] as const;

/** A band that plays a chart: bass on the roots, strummed chords, a tune with passing notes, a kick. */
function bandPlaying(chart: readonly ChordSlot[], bars: number, meterText = '4/4') {
  const [bass, chords, tune]: BandNote[][] = [[], [], []];
  let at = 0;
  for (const { chord, durationTicks } of chart) {
    if (chord !== 'no-chord') {
      const tones = chordTones(chord).map(({ pitchClass }) => chromaOf(pitchClass));
      bass!.push(bandNote(36 + chromaOf(chord.bass ?? chord.root), at, durationTicks));
      for (let tick = at; tick < at + durationTicks; tick += 480) {
        chords!.push(...tones.map((tone) => bandNote(60 + tone, tick, 400)));
        tune!.push(bandNote(72 + tones[(tick / 480) % tones.length]!, tick, 240));
        tune!.push(bandNote(73 + tones[(tick / 480) % tones.length]!, tick + 240, 120));
      }
    }
    at += durationTicks;
  }
  const kick = Array.from({ length: bars }, (_, i) => bandNote(36, 1920 * i));
  const tracks = [bass!, chords!, tune!, kick].map((notes, i) => bandTrack(notes, ROLES[i]!));
  return bandOf(tracks, times(bars, meterText));
}

/** A chart written in C major or A minor, in another key of its mode. */
function inKey(text: string, key: Key): ChordSlot[] {
  const home: Key = {
    tonic: { letter: key.mode === 'major' ? 'C' : 'A', alteration: 0 },
    mode: key.mode,
  };
  return valueOf(parseChart(text, meter('4/4'))).map((slot) =>
    slot.chord === 'no-chord'
      ? slot
      : { ...slot, chord: chordInKey(scaleChordOf(slot.chord, home), key) },
  );
}

const VERSE = '| C | Am | F | G | C | Em | Dm G | C |';
const CHORUS = '| F | G | Em | Am | F | G7 | C | / |';
const MINOR = '| Am | Dm | G | C | F | Dm | E7 | Am |';

describe('the map that is drawn from a band', () => {
  it.each(['C', 'G', 'D', 'A', 'E', 'F', 'B♭', 'E♭', 'A♭', 'D♭', 'B', 'F♯'])(
    'has the key of %s and its chords, spelled',
    (tonic) => {
      for (const mode of MODES) {
        const [letter, sign] = [tonic[0]!, tonic[1]];
        const alteration = sign === '♭' ? -1 : sign === '♯' ? 1 : 0;
        // Seven and eight flats: nobody writes these.
        if (mode === 'minor' && ['D♭', 'A♭'].includes(tonic)) continue;
        const key = { tonic: { letter, alteration }, mode } as Key;
        const slots = inKey(mode === 'major' ? VERSE : MINOR, key);
        const map = bandMap(bandPlaying(slots, 8), ROLES);
        expect(formatPitchClass(map.keys[0]!.key.tonic) + map.keys[0]!.key.mode).toBe(tonic + mode);
        expect(formatChart(map.sections[0]!.slots, meter('4/4'))).toBe(
          formatChart(slots, meter('4/4')),
        );
      }
    },
  );

  it('hears the bass of slash chords and offers what a chord could be as well', () => {
    const slots = valueOf(parseChart('| C | G/B | Am | F |', meter('4/4')));
    const { sections } = bandMap(bandPlaying(slots, 4), ROLES);
    expect(formatChart(sections[0]!.slots, meter('4/4'))).toBe('| C | G/B | Am | F |');
    const [first] = sections[0]!.slots;
    expect(first!.alternatives.map(formatChordSymbol)).not.toContain('C');
    expect(first!.alternatives.length).toBeGreaterThan(1);
  });

  it('finds the sections that return, and becomes a song with that form', () => {
    const text = [VERSE, CHORUS, VERSE, CHORUS].map((bars) => bars.slice(1)).join('');
    const slots = valueOf(parseChart(`|${text}`, meter('4/4')));
    const map = bandMap(bandPlaying(slots, 32), ROLES);
    expect(map.form).toEqual([0, 1, 0, 1]);
    expect(map.sections.map(({ bars }) => bars)).toEqual([8, 8]);
    let id = 0;
    const song = valueOf(
      songOfMap(
        {
          title: 'Made',
          key: map.keys[0]!.key,
          tempo: map.tempo,
          form: map.form,
          sections: map.sections.map(({ kind, meter: own, slots: chords }, i) => ({
            name: `Part ${i}`,
            kind,
            meter: own,
            chart: formatChart(chords, own),
          })),
        },
        () => `id ${id++}`,
      ),
    );
    expect(song.form.map(({ sectionId }) => sectionId)).toEqual(['id 0', 'id 1', 'id 0', 'id 1']);
  });

  it('says which section’s chart cannot be read', () => {
    const map = {
      title: '',
      key: { tonic: { letter: 'C', alteration: 0 }, mode: 'major' },
      tempo: { bpm: 100, beatTicks: 480 },
      form: [0],
      sections: [{ name: 'Verse', kind: 'verse', meter: meter('4/4'), chart: '| C | wrong |' }],
    } as const;
    expect(songOfMap(map, () => 'x')).toMatchObject({ error: { section: 0 } });
  });
});
