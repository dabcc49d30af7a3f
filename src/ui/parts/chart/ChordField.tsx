import { useId, useState } from 'react';
import type { Chord } from '../../../core/harmony/chord.ts';
import { formatChordSymbol, parseChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { setDrillChord } from '../../../state/edits/practice.ts';
import { useParts } from '../tool/parts.ts';
import { useProject } from '../tool/useProject.ts';
import { chordSymbolSentence } from './chartMessages.ts';

/** A chord, typed as a symbol. What can't be read is kept, with a sentence, and the chord stays. */
export function ChordText({
  label,
  chord,
  onChange,
}: {
  readonly label: string;
  readonly chord: Chord;
  readonly onChange: (chord: Chord) => void;
}) {
  const [typed, setTyped] = useState<string>();
  const problem = useId();
  const read = typed === undefined ? undefined : parseChordSymbol(typed.trim());
  const change = (text: string) => {
    setTyped(text);
    const next = parseChordSymbol(text.trim());
    if (next.ok) onChange(next.value);
  };
  return (
    <>
      <input
        type="text"
        className="practice-chord"
        aria-label={label}
        autoComplete="off"
        spellCheck={false}
        value={typed ?? formatChordSymbol(chord)}
        aria-invalid={read?.ok === false}
        aria-describedby={problem}
        onChange={(event) => change(event.target.value)}
        onBlur={() => read?.ok !== false && setTyped(undefined)}
      />
      <span id={problem} className="practice-problem" role="status">
        {read?.ok === false && chordSymbolSentence(read.error)}
      </span>
    </>
  );
}

/** The chord that is held. */
export function ChordField() {
  const { store } = useParts();
  const chord = useProject((project) => project.practice.drill.chord);
  return (
    <div className="field">
      <span aria-hidden="true">Chord</span>
      <ChordText
        label="Chord"
        chord={chord}
        onChange={(next) =>
          store.edit(setDrillChord(next), { label: 'held chord', gesture: 'held chord' })
        }
      />
    </div>
  );
}
