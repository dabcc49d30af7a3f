import { useEffect, useMemo, useRef, useState } from 'react';
import { createHandsSearch, type HandsSearch } from '../../app/handsSearch.ts';
import type { Section } from '../../core/song/song.ts';
import { type HandsAnswer, sectionHands } from '../../core/voicing/sectionHands.ts';
import type { Voicing } from '../../core/voicing/voicing.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** Sections with more chords are voiced in a worker (docs/decisions/014-voicing-in-a-worker.md). */
const MOST_CHORDS_AT_ONCE = 64;

/** A section with its hands, which belong to the chords that it has here. */
export type FoundHands = { readonly section: Section; readonly hands: HandsAnswer };

/**
 * The hands of a section's chords, slot by slot, as they are played wherever it returns. Those of a
 * long section are looked for in a worker: until they are found the section is as it was with the
 * hands it had, or undefined where it had none.
 */
export function useSectionHands(section: Section): FoundHands | undefined {
  const settings = useProject((project) => project.voicing);
  const isLong = section.slots.length > MOST_CHORDS_AT_ONCE;
  const search = useRef<HandsSearch>(undefined);
  const [found, setFound] = useState<FoundHands>();
  useEffect(() => {
    if (!isLong) return;
    search.current ??= createHandsSearch();
    search.current.ask({ chords: section.slots, settings }, (hands) =>
      setFound({ section, hands }),
    );
  }, [isLong, section, settings]);
  useEffect(
    () => () => {
      search.current?.close();
      search.current = undefined;
    },
    [],
  );
  const atOnce = useMemo(
    () =>
      isLong ? undefined : { section, hands: sectionHands({ chords: section.slots, settings }) },
    [isLong, section, settings],
  );
  return atOnce ?? (found?.section.id === section.id ? found : undefined);
}

/** The voicing that follows one in a round, N.C. passed over; undefined where it is the only one. */
export function voicingAfter(voicings: readonly Voicing[], slot: number): Voicing | undefined {
  const next = (from: number, to: number) => {
    for (let i = from; i < to; i++) if ((voicings[i]?.length ?? 0) > 0) return voicings[i];
    return undefined;
  };
  return next(slot + 1, voicings.length) ?? next(0, slot);
}
