import { useMemo } from 'react';
import { isHeardOver } from '../../app/sectionScore.ts';
import type { SectionId } from '../../core/ids.ts';
import type { PracticeSettings } from '../../core/practice/practiceSettings.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Scope } from '../../state/edits/hits.ts';
import { setBand, setSoundingHands } from '../../state/edits/practice.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { ChordField } from '../parts/chart/ChordField.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { patternRequest } from '../parts/tool/playRequest.ts';
import { usePlayback, useProject, useView } from '../parts/tool/useProject.ts';
import { EndingLine } from './EndingLine.tsx';

type Hearing = Pick<PracticeSettings, 'hands' | 'band'>;

const HEARINGS: readonly (Hearing & { readonly name: string; readonly does: string })[] = [
  { name: 'Band', does: 'Band alone', hands: 'none', band: true },
  { name: 'Left', does: 'Left hand alone', hands: 'left', band: false },
  { name: 'Right', does: 'Right hand alone', hands: 'right', band: false },
  { name: 'Hands', does: 'Hands alone', hands: 'both', band: false },
  { name: 'Both', does: 'Both, band and hands', hands: 'both', band: true },
];

/** Hears the band, a hand, the hands, or all: switches at once while it plays, and begins to play where nothing does. */
function Hear({ pattern }: { readonly pattern: Pattern }) {
  const { store, view, playback } = useParts();
  const { hands, band } = useProject((project) => project.practice);
  const isStopped = usePlayback().status === 'stopped';
  const hear = (wanted: Hearing) => {
    store.edit((project) => setBand(wanted.band)(setSoundingHands(wanted.hands)(project)), {
      label: 'what is heard',
    });
    if (isStopped) void playback.play(patternRequest(view.snapshot(), pattern.id));
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
          aria-label={each.does}
          aria-pressed={hands === each.hands && band === each.band}
          onClick={() => hear(each)}
        >
          {each.name}
        </button>
      ))}
    </div>
  );
}

/** What it is heard on: the chord that is held, or a section's progression; goes over at once while it plays. */
function HeardOn({ pattern }: { readonly pattern: Pattern }) {
  const { view, playback } = useParts();
  const wanted = useView((state) => state.heardOver);
  const project = useProject((whole) => whole);
  const sections = useMemo(
    () => project.song.sections.filter(({ id }) => isHeardOver(project, pattern, id)),
    [project, pattern],
  );
  const heardOver = sections.find(({ id }) => id === wanted)?.id;
  const choose = (over: SectionId | undefined) => {
    view.set({ heardOver: over });
    playback.turnTo(patternRequest({ ...(over !== undefined && { heardOver: over }) }, pattern.id));
  };
  return (
    <>
      <select
        aria-label="Heard on"
        className="pattern-heard-on"
        value={heardOver ?? ''}
        onChange={(event) => choose(event.target.value || undefined)}
      >
        <option value="">on a chord</option>
        {sections.map(({ id, name }) => (
          <option key={id} value={id}>
            on {name}
          </option>
        ))}
      </select>
      {heardOver === undefined && <ChordField />}
    </>
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
      <HeardOn pattern={pattern} />
      <EndingLine {...{ pattern, scope, onScope, onEnding }} />
      <span className="pattern-space" />
      <PopupButton name="The band">
        {(close) => (
          <div className="pattern-menu">
            <button
              type="button"
              onClick={() => {
                onBringBand();
                close();
              }}
            >
              Bring in a band …
            </button>
            <button
              type="button"
              disabled={pattern.sources.length === 0}
              onClick={() => {
                onDeriveAgain();
                close();
              }}
            >
              Derive again …
            </button>
          </div>
        )}
      </PopupButton>
    </div>
  );
}
