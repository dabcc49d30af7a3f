import type { Project } from '../../src/core/project.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { timelineOf } from '../../src/core/song/timeline.ts';
import { secondsAt } from '../../src/core/time/tempoMap.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';
import { decodeShelfPattern } from '../../src/formats/patternFile.ts';
import { NO_COUNT_IN } from './fakePlayback.ts';
import { meter, section, slots, song, valueOf } from './music.ts';
import { project } from './project.ts';

const FILES = import.meta.glob<unknown>('../../patterns/*.json', {
  eager: true,
  import: 'default',
});

function shelved(name: string): Pattern {
  return valueOf(decodeShelfPattern(FILES[`../../patterns/${name}.json`])).pattern;
}

/** Sections of several meters and patterns, with the name of the shelf's pattern; `rest` has none. */
const SECTIONS = [
  ['verse', '4/4', 'ballad-eighths', '| D | Bm7 | Gmaj7 | Em7 / A7 / |'],
  ['chorus', '4/4', 'rock-eighths', '| D | G/D | Bm7 | A7sus4 / A7 / |'],
  ['waltz', '3/4', 'waltz', '| F♯m7 | B7 | Em7 | A7 |'],
  ['lilt', '6/8', 'six-eight-ballad', '| Bm | G | Em7 | F♯7 |'],
  ['five', '5/4', 'five-four-vamp', '| Em7 | A7 |'],
  ['swung', '4/4', 'boogie-shuffle', '| E7 | A7 | E7 | B7 |'],
  ['rest', '4/4', undefined, '| N.C. | N.C. | N.C. |'],
] as const;

const ROUND = 'verse chorus waltz chorus lilt five swung verse rest';

/** 97 bpm: hardly any beat falls on a sample. */
const TEMPO = { bpm: 97, beatTicks: 480 };

/** A song that lasts at least so long, through all `SECTIONS` round and round; band and click on, no count-in. */
export function longSong(leastSec: Seconds): Project {
  const sections = SECTIONS.map(([id, meterText, patternId, chart]) =>
    section(id, {
      meter: meter(meterText),
      slots: slots(chart, meterText),
      ...(patternId && { patternId }),
    }),
  );
  const round = song(sections, ROUND, { tempo: TEMPO });
  const roundSec = secondsAt([{ tick: 0, tempo: TEMPO }], timelineOf(round).lengthTicks);
  const rounds = Math.ceil(leastSec / roundSec);
  const form = Array.from({ length: rounds }, () => ROUND).join(' ');
  return project({
    song: song(sections, form, { tempo: TEMPO }),
    patterns: SECTIONS.flatMap(([, , name]) => (name ? [shelved(name)] : [])),
    practice: { ...NO_COUNT_IN, band: true },
  });
}
