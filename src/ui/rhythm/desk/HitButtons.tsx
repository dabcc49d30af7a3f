import { useState } from 'react';
import type { PatternId } from '../../../core/ids.ts';
import { type Pattern, TOUCHES, type Touch } from '../../../core/rhythm/pattern.ts';
import { BASS_TONES, VOICE_TONES, type VoiceTone } from '../../../core/rhythm/tones.ts';
import { type Scope, setHitHeld, setHitPlay, setHitTouch } from '../../../state/edits/hits.ts';
import type { GridAction } from '../../parts/grid/gridKeys.ts';
import type { Chosen } from '../../parts/grid/gridPlace.ts';
import { hitChange, toneSwitched } from '../../parts/grid/hitChanges.ts';
import { BASS_NAMES, spokenTone, VOICE_NAMES } from '../../parts/pattern/toneNames.ts';
import { useParts } from '../../parts/tool/parts.ts';

type ChosenHit = Extract<Chosen, { readonly kind: 'hit' }>;

type Props = {
  readonly patternId: PatternId;
  readonly scope: Scope;
  readonly shown: Pattern;
  readonly chosen: ChosenHit;
  /** The step the hit stands on after a button has moved it. */
  readonly onGo: (column: number) => void;
};

const TOUCH_NAMES: Readonly<Record<Touch, string>> = {
  ghost: '( ghost )',
  plain: 'plain',
  accent: '> accent',
};

/** Several bass tones may sound together; each button puts one in or takes it out. */
function LeftTones({ patternId, scope, chosen }: Props) {
  const { store } = useParts();
  const { play, at } = chosen.hit;
  const tones = BASS_TONES.filter((tone) => play.some((each) => each === tone));
  return BASS_TONES.map((tone) => (
    <button
      key={tone}
      type="button"
      aria-pressed={tones.includes(tone)}
      onClick={() =>
        store.edit(setHitPlay(patternId, 'left', at, toneSwitched(tones, tone), scope), {
          label: 'what a hit plays',
        })
      }
    >
      {BASS_NAMES[tone].name}
    </button>
  ));
}

/** One choice out of the voicing, or several that sound together: then each button puts one in or takes it out. */
function RightTones({ patternId, scope, chosen }: Props) {
  const { store } = useParts();
  const { play, at } = chosen.hit;
  const [wanted, setWanted] = useState<boolean>();
  const tones = VOICE_TONES.filter((tone) => play.some((each) => each === tone));
  const areSeveral = wanted ?? tones.length > 1;
  const choose = (tone: VoiceTone) => {
    // The whole chord has all the others in it.
    const isOne = !areSeveral || tone === 'all' || tones.includes('all');
    const next = isOne ? [tone] : toneSwitched(tones, tone);
    store.edit(setHitPlay(patternId, 'right', at, next, scope), { label: 'what a hit plays' });
  };
  return (
    <>
      {VOICE_TONES.map((tone) => (
        <button
          key={tone}
          type="button"
          aria-label={spokenTone(tone)}
          aria-pressed={tones.includes(tone)}
          onClick={() => choose(tone)}
        >
          {VOICE_NAMES[tone].name}
        </button>
      ))}
      <button type="button" aria-pressed={areSeveral} onClick={() => setWanted(!areSeveral)}>
        several
      </button>
    </>
  );
}

function Manner({ patternId, scope, chosen }: Props) {
  const { store } = useParts();
  const { hand, hit } = chosen;
  return (
    <>
      <div role="group" aria-label="Touch" className="pattern-buttons">
        {TOUCHES.map((touch) => (
          <button
            key={touch}
            type="button"
            aria-pressed={hit.touch === touch}
            onClick={() =>
              store.edit(setHitTouch(patternId, hand, hit.at, touch, scope), { label: 'touch' })
            }
          >
            {TOUCH_NAMES[touch]}
          </button>
        ))}
      </div>
      <div role="group" aria-label="Length" className="pattern-buttons">
        {[true, false].map((held) => (
          <button
            key={String(held)}
            type="button"
            aria-pressed={hit.held === held}
            onClick={() =>
              store.edit(setHitHeld(patternId, hand, hit.at, held, scope), {
                label: 'short or held',
              })
            }
          >
            {held ? 'held' : 'short ·'}
          </button>
        ))}
      </div>
    </>
  );
}

/** Buttons that do what a key of the grid does, with that key's edits. */
const MOVES: readonly { readonly name: string; readonly action: GridAction }[] = [
  { name: 'earlier', action: { kind: 'move', by: -1 } },
  { name: 'later', action: { kind: 'move', by: 1 } },
  { name: 'shorter', action: { kind: 'lengthen', by: -1 } },
  { name: 'longer', action: { kind: 'lengthen', by: 1 } },
  { name: 'remove', action: { kind: 'remove' } },
];

function Moves({ patternId, scope, shown, chosen, onGo }: Props) {
  const { store } = useParts();
  const { hand, hit, column } = chosen;
  const make = (action: GridAction) => {
    const change = hitChange({ patternId, scope, shown, hand, column }, action);
    if (!change) return;
    store.edit(change.edit, { label: change.label });
    onGo(change.column);
  };
  return (
    <div role="group" aria-label="Place and length" className="pattern-buttons">
      <button
        type="button"
        aria-pressed={hit.anticipates === true}
        onClick={() => make({ kind: 'leads' })}
      >
        leads into next chord
      </button>
      {MOVES.map(({ name, action }) => (
        <button key={name} type="button" onClick={() => make(action)}>
          {name}
        </button>
      ))}
    </div>
  );
}

/** This hit: what it plays, how it is touched, how long and where it stands. */
export function HitButtons(props: Props) {
  const isLeft = props.chosen.hand === 'left';
  return (
    <>
      <h3 className={`pattern-choice-title pattern-${props.chosen.hand}`}>
        {isLeft ? 'Left hand plays' : 'Right hand plays'}
      </h3>
      <div role="group" aria-label="Plays" className="pattern-buttons">
        {isLeft ? <LeftTones {...props} /> : <RightTones key={props.chosen.hit.at} {...props} />}
      </div>
      <Manner {...props} />
      <Moves {...props} />
    </>
  );
}
