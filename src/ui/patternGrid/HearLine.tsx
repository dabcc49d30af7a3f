import type { PracticeSettings } from '../../core/practice/practiceSettings.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Scope } from '../../state/edits/hits.ts';
import { setBand, setSoundingHands } from '../../state/edits/practice.ts';
import { useParts } from '../parts.ts';
import { ChordField } from '../practice/ChordField.tsx';
import { usePlayback, useProject } from '../useProject.ts';
import { Ending } from './Ending.tsx';

type Hearing = Pick<PracticeSettings, 'hands' | 'band'>;

const HEARINGS: readonly (Hearing & { readonly name: string })[] = [
  { name: 'Band', hands: 'none', band: true },
  { name: 'Hands', hands: 'both', band: false },
  { name: 'Both', hands: 'both', band: true },
];

/** Hears the band, the hands, or both: switches at once while it plays, and begins to play where nothing does. */
function Hear({ pattern }: { readonly pattern: Pattern }) {
  const { store, playback } = useParts();
  const { hands, band } = useProject((project) => project.practice);
  const isStopped = usePlayback().status === 'stopped';
  const hear = (wanted: Hearing) => {
    store.edit((project) => setBand(wanted.band)(setSoundingHands(wanted.hands)(project)), {
      label: 'what is heard',
    });
    if (isStopped) void playback.play({ kind: 'pattern', patternId: pattern.id });
  };
  return (
    <div role="group" aria-label="Hear" className="pattern-buttons">
      <span className="pattern-caption" aria-hidden="true">
        Hear
      </span>
      {HEARINGS.map((each) => (
        <button
          key={each.name}
          type="button"
          aria-pressed={hands === each.hands && band === each.band}
          onClick={() => hear(each)}
        >
          {each.name}
        </button>
      ))}
    </div>
  );
}

/** Second line of the page: what is heard and on which chord, the ending, and what the band gives. */
export function HearLine({
  pattern,
  scope,
  onScope,
  onEnding,
  onBringBand,
  onDeriveAgain,
}: {
  readonly pattern: Pattern;
  readonly scope: Scope;
  readonly onScope: (scope: Scope) => void;
  /** An ending was made: shows what it can be graced with. */
  readonly onEnding: () => void;
  readonly onBringBand: () => void;
  readonly onDeriveAgain: () => void;
}) {
  return (
    <div className="pattern-hear">
      <Hear pattern={pattern} />
      <ChordField />
      <Ending {...{ pattern, scope, onScope, onEnding }} />
      <span className="pattern-space" />
      {pattern.sources.length > 0 && (
        <button type="button" onClick={onDeriveAgain}>
          Derive again …
        </button>
      )}
      <button type="button" onClick={onBringBand}>
        Bring in a band …
      </button>
    </div>
  );
}
