import { useRef, useState } from 'react';
import { readPatterns, savedPatterns } from '../../../app/patternFiles.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { saveFile } from '../../kit/saveFile.ts';
import { usePatternActions } from '../../parts/pattern/usePatterns.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { patternFileSentence } from './patternFileMessages.ts';

/** Takes a pattern file, with its variations, into the song; says what is wrong where it can't be read. */
export function FromPatternFile({ onTaken }: { readonly onTaken: () => void }) {
  const { addFamily } = usePatternActions();
  const field = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState<string>();
  const take = async (input: HTMLInputElement) => {
    const text = await input.files?.[0]?.text();
    // Emptied, so that the same file can be chosen again once it is repaired.
    input.value = '';
    if (text === undefined) return;
    const read = readPatterns(text);
    if (!read.ok) return setProblem(patternFileSentence(read.error));
    addFamily(read.value);
    onTaken();
  };
  return (
    <>
      <button type="button" onClick={() => field.current?.click()}>
        From a pattern file …
      </button>
      <input
        ref={field}
        type="file"
        hidden
        aria-label="Pattern file"
        accept=".json,application/json"
        onChange={(event) => void take(event.currentTarget)}
      />
      {problem && (
        <p role="alert" className="desk-problem">
          {problem}
        </p>
      )}
    </>
  );
}

/** Saves a pattern with its ending and its variations as a file. */
export function SaveAsFile({ shown }: { readonly shown: Pattern }) {
  const { store } = useParts();
  const save = () => {
    const file = savedPatterns(store.snapshot(), shown.id);
    if (file) saveFile(file.name, file.text);
  };
  return (
    <button type="button" onClick={save}>
      Save as a file, with its variations
    </button>
  );
}
