import { useEffect, useRef, useState } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import { setEnding } from '../../../state/edits/pattern.ts';
import { useWidth } from '../../kit/useWidth.ts';
import { useTrial } from '../../parts/pattern/useTrial.ts';
import { RhythmPicture } from '../../parts/picture/RhythmPicture.tsx';
import { useParts } from '../../parts/tool/parts.ts';
import { ENDING_WORDS, type EndingKind } from './fillWords.ts';
import { type OfferedEnding, useFills } from './useFills.ts';

type Props = {
  readonly pattern: Pattern;
  readonly onScope: (scope: Scope) => void;
};

/** The widest that an ending is drawn. */
const WIDEST_PICTURE = 460;

function Picture({ bar }: { readonly bar: Pattern }) {
  const place = useRef<HTMLDivElement>(null);
  const width = Math.min(useWidth(place), WIDEST_PICTURE);
  return (
    <div ref={place} className="desk-fill-picture">
      {width > 0 && <RhythmPicture pattern={bar} width={width} />}
    </div>
  );
}

/** The ending that is chosen: drawn, heard in a phrase, and taken. */
function Chosen({ offered, pattern, onScope }: Props & { readonly offered: OfferedEnding }) {
  const { store, playback } = useParts();
  const trial = useTrial();
  const { name, does } = ENDING_WORDS[offered.kind];
  const { phrase } = offered;
  const { heard } = trial;
  const isHeard = heard?.id === phrase.id;
  // What is heard follows what is chosen, and the ending as it is changed on the spine.
  useEffect(() => {
    if (isHeard && heard !== phrase)
      playback.turnTo({ kind: 'pattern', patternId: phrase.id, pattern: phrase });
  }, [isHeard, heard, phrase, playback]);
  const take = () => {
    store.edit(setEnding(pattern.id, offered.ending), { label: `ending: ${name.toLowerCase()}` });
    trial.stop();
    onScope('ending');
  };
  return (
    <div className="desk-fill">
      <Picture bar={offered.bar} />
      <p role="status">{does}</p>
      <div className="desk-fill-buttons">
        <button
          type="button"
          aria-pressed={isHeard}
          onClick={() => (isHeard ? trial.stop() : trial.hear(phrase))}
        >
          {isHeard ? 'Stop' : 'Hear it'}
        </button>
        {offered.kind !== 'as-it-is' && (
          <button type="button" className="strong" onClick={take}>
            Take as the ending
          </button>
        )}
      </div>
    </div>
  );
}

/** What the bar can be that a section closes with: chosen, heard in a phrase, taken, and then changed on the spine. */
export function EndingPanel({ pattern, onScope }: Props) {
  const offered = useFills(pattern);
  const [kind, setKind] = useState<EndingKind>();
  const chosen = offered.find((each) => each.kind === kind);
  return (
    <div className="desk-ending">
      <div role="group" aria-label="Fill" className="pattern-buttons">
        {offered.map((each) => (
          <button
            key={each.kind}
            type="button"
            aria-pressed={each === chosen}
            onClick={() => setKind(each.kind)}
          >
            {ENDING_WORDS[each.kind].name}
          </button>
        ))}
      </div>
      {chosen ? (
        <Chosen offered={chosen} pattern={pattern} onScope={onScope} />
      ) : (
        <p className="desk-says">
          Choose a fill for the last bar before a section ends. It is heard in a phrase before it is
          taken, and can then be changed like any bar.
        </p>
      )}
    </div>
  );
}
