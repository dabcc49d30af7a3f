import { useState } from 'react';
import { formatChordSymbol, parseChordSymbol } from '../../core/harmony/chordSymbol.ts';
import { setDrillChord } from '../../state/edits/practice.ts';
import { chordSymbolSentence } from '../chart/chartMessages.ts';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';

/** The chord that is held, typed as a symbol. What can't be read is kept, with a sentence, and the chord stays. */
export function ChordField() {
  const { store } = useParts();
  const chord = useProject((project) => project.practice.drill.chord);
  const [typed, setTyped] = useState<string>();
  const read = typed === undefined ? undefined : parseChordSymbol(typed.trim());
  const change = (text: string) => {
    setTyped(text);
    const next = parseChordSymbol(text.trim());
    if (next.ok)
      store.edit(setDrillChord(next.value), { label: 'held chord', gesture: 'held chord' });
  };
  return (
    <label className="field">
      <span>Chord</span>
      <input
        type="text"
        className="practice-chord"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? formatChordSymbol(chord)}
        aria-invalid={read?.ok === false}
        aria-describedby="practice-chord-problem"
        onChange={(event) => change(event.target.value)}
        onBlur={() => read?.ok !== false && setTyped(undefined)}
      />
      <span id="practice-chord-problem" className="practice-problem" role="status">
        {read?.ok === false && chordSymbolSentence(read.error)}
      </span>
    </label>
  );
}
