import { memo } from 'react';
import type { Chord } from '../../core/harmony/chord.ts';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { ChordSlot } from '../../core/song/song.ts';
import { motion } from '../../core/voicing/motion.ts';
import { nextInversion } from '../../core/voicing/nextInversion.ts';
import {
  type HandName,
  type HeldKeys,
  heldKeys,
  keysOfHand,
  type Voicing,
  type VoicingSettings,
} from '../../core/voicing/voicing.ts';
import { sameData } from '../../state/sameData.ts';
import { KeyboardDrawing } from '../parts/keyboard/KeyboardDrawing.tsx';
import type { KeyboardSpan } from '../parts/keyboard/keyboardGeometry.ts';
import { noteName } from '../parts/keyboard/noteNames.ts';
import { ChordName, MusicText } from '../parts/song/ChordName.tsx';

/** What can be done with the hands of a slot of the row. */
export type ChordActs = {
  readonly pin: (slot: number, held: HeldKeys, label: string) => void;
  readonly letGo: (slot: number) => void;
  readonly open: (slot: number) => void;
};

const HAND_LETTERS: Readonly<Record<HandName, string>> = { left: 'L', right: 'R' };

function namesOf(voicing: Voicing, hand: HandName, chord: Chord): string {
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

function NudgeButton({
  name,
  to,
  next,
  onNudge,
}: {
  readonly name: string;
  readonly to: 'up' | 'down';
  /** The hands it leads to; undefined where there are none. */
  readonly next: Voicing | undefined;
  readonly onNudge: (next: Voicing) => void;
}) {
  return (
    <button
      type="button"
      aria-label={`${name}: next inversion ${to}`}
      title={`Next inversion ${to}`}
      disabled={!next}
      onClick={() => next && onNudge(next)}
    >
      <Chevron to={to} />
    </button>
  );
}

type ChordHandsProps = {
  readonly slot: ChordSlot;
  readonly place: number;
  readonly voicing: Voicing;
  readonly next: Voicing | undefined;
  readonly settings: VoicingSettings;
  readonly span: KeyboardSpan;
  readonly keyboardPx: number;
  readonly showsFingers: boolean;
  readonly isOpen: boolean;
  readonly acts: ChordActs;
};

function Buttons({
  chord,
  name,
  isPinned,
  place,
  voicing,
  settings,
  acts,
}: {
  readonly chord: Chord;
  readonly name: string;
  readonly isPinned: boolean;
} & Pick<ChordHandsProps, 'place' | 'voicing' | 'settings' | 'acts'>) {
  return (
    <span className="keyboard-buttons">
      {(['down', 'up'] as const).map((to) => (
        <NudgeButton
          key={to}
          name={name}
          to={to}
          next={nextInversion(voicing, chord, to, settings)}
          onNudge={(next) => acts.pin(place, heldKeys(next), `inversion ${to}`)}
        />
      ))}
      <button
        type="button"
        className="keyboard-pin"
        aria-pressed={isPinned}
        aria-label={isPinned ? `${name} is pinned: let it go` : `Pin ${name}`}
        onClick={() =>
          isPinned ? acts.letGo(place) : acts.pin(place, heldKeys(voicing), 'pin hands')
        }
      >
        {isPinned ? 'Pinned' : 'Pin'}
      </button>
    </span>
  );
}

/**
 * One chord of a row: its name, its hands on a keyboard, and how they go on to the next. Drawn anew
 * only where something of it is another than before, as rows can be long.
 */
export const ChordHands = memo(function ChordHands({
  slot,
  place,
  voicing,
  next,
  settings,
  span,
  keyboardPx,
  showsFingers,
  isOpen,
  acts,
}: ChordHandsProps) {
  const { chord } = slot;
  if (chord === 'no-chord')
    return (
      <li className="keyboard-chord" data-slot={place}>
        <h3 className="keyboard-name">
          <ChordName chord={chord} />
        </h3>
        <p className="hint">Both hands are free.</p>
      </li>
    );
  const name = formatChordSymbol(chord);
  const left = namesOf(voicing, 'left', chord);
  const right = namesOf(voicing, 'right', chord);
  const isPinned = slot.fixedKeys !== undefined;
  const moves = next && motion(keysOfHand(voicing, 'right'), keysOfHand(next, 'right'));
  return (
    <li className="keyboard-chord" data-slot={place} data-pinned={isPinned || undefined}>
      <div className="keyboard-head">
        <h3 className="keyboard-name">
          <button
            type="button"
            aria-expanded={isOpen}
            aria-label={`${name}: choose its keys`}
            onClick={() => acts.open(place)}
          >
            <ChordName chord={chord} />
          </button>
        </h3>
        <Buttons
          chord={chord}
          name={name}
          isPinned={isPinned}
          place={place}
          voicing={voicing}
          settings={settings}
          acts={acts}
        />
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
        {moves !== undefined && (
          <span className="keyboard-motion">{moves === 0 ? 'stays' : `moves ${moves}`}</span>
        )}
      </p>
    </li>
  );
}, sameData);
