import type { Semitones } from '../../core/harmony/pitch.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import { type HandName, keysOfHand, type Voicing } from '../../core/voicing/voicing.ts';
import { ChordName, MusicText } from '../ChordName.tsx';
import { KeyboardDrawing } from './KeyboardDrawing.tsx';
import type { KeyboardSpan } from './keyboardGeometry.ts';
import { noteName } from './noteNames.ts';

/** What can be done with the hands of one chord; undefined where it can't. */
export type HandActs = {
  readonly up: (() => void) | undefined;
  readonly down: (() => void) | undefined;
  readonly pin: () => void;
  readonly open: () => void;
};

const HAND_LETTERS: Readonly<Record<HandName, string>> = { left: 'L', right: 'R' };

function namesOf(voicing: Voicing, hand: HandName, { chord }: ChordSlot): string {
  if (chord === 'no-chord') return '';
  return keysOfHand(voicing, hand)
    .map((key) => noteName(key, chord))
    .join(' ');
}

function HandNotes({ hand, names }: { readonly hand: HandName; readonly names: string }) {
  return (
    <span className={`keyboard-notes keyboard-notes-${hand}`}>
      <b>{HAND_LETTERS[hand]}</b> {names === '' ? '–' : <MusicText text={names} />}
    </span>
  );
}

function Chevron({ to }: { readonly to: 'up' | 'down' }) {
  return (
    <svg className="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={to === 'up' ? 'M5.5 15 12 8.5 18.5 15' : 'M5.5 9 12 15.5 18.5 9'} />
    </svg>
  );
}

function Buttons({
  name,
  isPinned,
  acts,
}: {
  readonly name: string;
  readonly isPinned: boolean;
  readonly acts: HandActs;
}) {
  return (
    <span className="keyboard-buttons">
      <button
        type="button"
        aria-label={`${name}: next inversion down`}
        title="Next inversion down"
        disabled={!acts.down}
        onClick={acts.down}
      >
        <Chevron to="down" />
      </button>
      <button
        type="button"
        aria-label={`${name}: next inversion up`}
        title="Next inversion up"
        disabled={!acts.up}
        onClick={acts.up}
      >
        <Chevron to="up" />
      </button>
      <button
        type="button"
        className="keyboard-pin"
        aria-pressed={isPinned}
        aria-label={isPinned ? `${name} is pinned: let it go` : `Pin ${name}`}
        onClick={acts.pin}
      >
        {isPinned ? 'Pinned' : 'Pin'}
      </button>
    </span>
  );
}

/** One chord of the section: its name, its hands on a keyboard, and how they go on to the next. */
export function ChordHands({
  slot,
  place,
  name,
  voicing,
  next,
  motionToNext,
  span,
  keyboardPx,
  showsFingers,
  isOpen,
  acts,
}: {
  readonly slot: ChordSlot;
  readonly place: number;
  readonly name: string;
  readonly voicing: Voicing;
  readonly next: Voicing | undefined;
  readonly motionToNext: Semitones;
  readonly span: KeyboardSpan;
  readonly keyboardPx: number;
  readonly showsFingers: boolean;
  readonly isOpen: boolean;
  readonly acts: HandActs;
}) {
  const left = namesOf(voicing, 'left', slot);
  const right = namesOf(voicing, 'right', slot);
  const isPinned = slot.fixedKeys !== undefined;
  if (slot.chord === 'no-chord')
    return (
      <li className="keyboard-chord" data-slot={place}>
        <h3 className="keyboard-name">
          <ChordName chord={slot.chord} />
        </h3>
        <p className="hint">Both hands are free.</p>
      </li>
    );
  return (
    <li className="keyboard-chord" data-slot={place} data-pinned={isPinned || undefined}>
      <div className="keyboard-head">
        <h3 className="keyboard-name">
          <button
            type="button"
            aria-expanded={isOpen}
            aria-label={`${name}: choose its keys`}
            onClick={acts.open}
          >
            <ChordName chord={slot.chord} />
          </button>
        </h3>
        <Buttons name={name} isPinned={isPinned} acts={acts} />
      </div>
      <KeyboardDrawing
        voicing={voicing}
        next={next}
        span={span}
        widthPx={keyboardPx}
        showsFingers={showsFingers}
        label={`Left hand ${left}, right hand ${right}`}
      />
      <p className="keyboard-foot" style={{ width: keyboardPx }}>
        <HandNotes hand="left" names={left} />
        <HandNotes hand="right" names={right} />
        {next && (
          <span className="keyboard-motion">
            {motionToNext === 0 ? 'stays' : `moves ${motionToNext}`}
          </span>
        )}
      </p>
    </li>
  );
}
