import { useMemo } from 'react';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { scoreSentence } from '../tool/messages.ts';
import { useProject } from '../tool/useProject.ts';
import { NotationView } from './NotationView.tsx';
import { notatedPattern } from './notatedPattern.ts';

/** A pattern on the held chord, under the song's key signature; or why no hands play it there. */
export function PatternSheet({ pattern }: { readonly pattern: Pattern }) {
  const chord = useProject((project) => project.practice.drill.chord);
  const voicing = useProject((project) => project.voicing);
  const key = useProject((project) => project.song.key);
  const notation = useMemo(
    () => notatedPattern(pattern, { chord, voicing, key }),
    [pattern, chord, voicing, key],
  );
  if (notation.ok) return <NotationView notation={notation.value} size="panel" />;
  const unplayable = { kind: 'nothing-playable', chord: formatChordSymbol(chord) } as const;
  return <p role="alert">{scoreSentence(unplayable)}</p>;
}
