import type { BarRange } from '../../app/score.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { entryBars } from '../parts/song/marking.ts';
import type { Parts } from '../parts/tool/parts.ts';

/**
 * The bars that are played once one goes to a place of the form: still the whole song, still up to its
 * end, or else the one playing of a section instead of what was played before.
 */
export function barsFrom(
  timeline: Timeline,
  place: number,
  before: BarRange | undefined,
): BarRange | undefined {
  if (!before) return undefined;
  const section = entryBars(timeline, place);
  const last = timeline.bars.length;
  return before.endBar === last && before.firstBar < last - entryLength(timeline)
    ? { firstBar: section.firstBar, endBar: last }
    : section;
}

/** How many bars the form's last playing has. */
function entryLength({ sections }: Timeline): number {
  return sections.at(-1)?.bars ?? 0;
}

/** The song that plays at this moment, as far as the next jump depends on it. */
function heardSong({ playback }: Parts) {
  const playing = playback.state();
  if (playing.status !== 'playing' || playing.request.kind !== 'song') return undefined;
  const bar = playing.wantedBar ?? playback.position()?.bar ?? playing.request.range?.firstBar ?? 0;
  return { bar, range: playing.request.range };
}

/**
 * Goes to a place of the form: where the song plays, at the next bar line; at rest that playing is
 * marked for playing, or the whole song again where it was marked.
 */
export function goToSection(parts: Parts, place: number): void {
  const { store, playback, view } = parts;
  const timeline = selectTimeline(store.snapshot());
  const song = heardSong(parts);
  const section = entryBars(timeline, place);
  if (!song) {
    const marked = view.snapshot().range;
    const range = barsFrom(timeline, place, marked) ?? section;
    const isMarked = marked?.firstBar === range.firstBar && marked.endBar === range.endBar;
    if (playback.state().status === 'stopped') view.set({ range: isMarked ? undefined : range });
    return;
  }
  const range = barsFrom(timeline, place, song.range);
  view.set({ range });
  playback.jump({ toBar: section.firstBar, ...(range && { range }) });
}

/**
 * Goes so many sections on (back, where negative; 0: to the start of this one) from the one that is
 * wanted next, is heard, or is marked. Beyond the first and the last there is nothing.
 */
export function goToSectionBeside(parts: Parts, by: number): void {
  const timeline = selectTimeline(parts.store.snapshot());
  const song = heardSong(parts);
  if (!song && by === 0) return;
  const bar = song?.bar ?? parts.view.snapshot().range?.firstBar ?? 0;
  const place = timeline.bars[bar]?.section;
  if (place === undefined || !timeline.sections[place + by]) return;
  goToSection(parts, place + by);
}
