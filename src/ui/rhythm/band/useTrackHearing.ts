import { useEffect, useState } from 'react';
import { tempoOfBar } from '../../../app/bandImport.ts';
import type { PhraseRequest } from '../../../app/score.ts';
import type { Band, TrackRole } from '../../../core/rhythm/band.ts';
import { trackNotes } from '../../../core/rhythm/bandNotes.ts';
import type { BandBars } from '../../../core/rhythm/strokes.ts';
import { barTicks } from '../../../core/time/meter.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { usePlayback } from '../../parts/tool/useProject.ts';

/** The chosen bars of one track as they stand in the file, as a phrase. */
function requestOf(band: Band, index: number, role: TrackRole, range: BandBars): PhraseRequest {
  const first = band.bars[range.firstBar] ?? band.bars[0]!;
  const bars = Math.max(1, range.lastBar - range.firstBar + 1);
  const silent = { chord: 'no-chord', durationTicks: bars * barTicks(first.meter) } as const;
  return {
    kind: 'phrase',
    phrase: { meter: first.meter, barMeters: [], slots: [silent] },
    played: {
      notes: trackNotes(band, band.tracks[index]!, role, range),
      bpm: tempoOfBar(band, first),
    },
  };
}

/** Hears one track of a band by itself, in the chosen bars; which one is heard, by place. */
export function useTrackHearing(band: Band, roles: readonly TrackRole[], range: BandBars) {
  const { playback } = useParts();
  const { status } = usePlayback();
  const [wanted, setWanted] = useState<number>();
  const heard = status === 'stopped' ? undefined : wanted;
  useEffect(() => () => playback.stop(), [playback]);
  return {
    heard,
    toggle: (index: number) => {
      if (heard === index) return playback.stop();
      setWanted(index);
      void playback.play(requestOf(band, index, roles[index] ?? 'other', range));
    },
  };
}
