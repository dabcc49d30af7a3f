import type { SectionId } from '../../core/ids.ts';
import type { FormEntry, OtherEnding } from '../../core/song/song.ts';
import type { Voicing } from '../../core/voicing/voicing.ts';
import { selectTimeline, selectVoicings } from '../../state/selectors.ts';
import { playingName } from '../parts/song/marking.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** The other ending of one playing with its hands, and those that follow it. */
export type EndingHands = {
  readonly entry: FormEntry;
  /** The name of the playing, “Verse 2”. */
  readonly playing: string;
  readonly ending: OtherEnding;
  readonly voicings: readonly Voicing[];
  readonly after: Voicing | undefined;
};

/**
 * The other endings of a section's playings in playing order, with the hands that are played there;
 * none as long as a chord of the song can't be played.
 */
export function useEndings(sectionId: SectionId): EndingHands[] {
  const form = useProject((project) => project.song.form);
  const timeline = useProject(selectTimeline);
  const isEnded = form.some((entry) => entry.sectionId === sectionId && entry.ending);
  const voiced = useProject((project) => (isEnded ? selectVoicings(project) : undefined));
  if (!voiced?.ok) return [];
  return form.flatMap((entry, place) => {
    const { ending } = entry;
    if (entry.sectionId !== sectionId || !ending) return [];
    const isHere = ({ section, inEnding }: (typeof timeline.chords)[number]) =>
      inEnding !== undefined && section === place;
    const end = timeline.chords.findLastIndex(isHere) + 1;
    return {
      entry,
      playing: playingName(timeline, place),
      ending,
      voicings: voiced.value.slice(end - ending.slots.length, end),
      after: voiced.value.slice(end).find((voicing) => voicing.length > 0),
    };
  });
}
