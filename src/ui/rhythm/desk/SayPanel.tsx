import { useId, useState } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { readSaid } from './readSaid.ts';
import { saidSentence } from './sayMessages.ts';
import { TargetField } from './TargetField.tsx';
import { targetOfKey } from './targets.ts';
import { useSaying } from './useSaying.ts';

/** The counts that sound are typed as they are spoken, and stand on the spine at once. */
export function SayPanel({ pattern }: { readonly pattern: Pattern }) {
  const [key, setKey] = useState('right');
  const named = targetOfKey(pattern, key);
  const { text, isTyping, type, leave } = useSaying(pattern, named);
  const said = readSaid(text, pattern);
  const note = useId();
  const isWrong = isTyping && !said.ok;
  return (
    <div className="desk-say">
      <div className="desk-line">
        <TargetField pattern={pattern} chosen={named.key} onChoose={setKey} />
        <input
          type="text"
          className="desk-counts"
          aria-label={`Counts that sound, ${named.name}`}
          aria-invalid={isWrong}
          aria-describedby={note}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          value={text}
          placeholder="1 & 2 & 3 e & a"
          onChange={(event) => type(event.target.value)}
          onBlur={() => setKey(leave() ?? key)}
        />
      </div>
      <p id={note} role="status" className={isWrong ? 'desk-problem' : 'desk-note'}>
        {isWrong
          ? saidSentence(said.error)
          : 'What is written sounds; what is counted in brackets does not: 1 & (2) & 3. A bar line | begins the next bar.'}
      </p>
    </div>
  );
}
