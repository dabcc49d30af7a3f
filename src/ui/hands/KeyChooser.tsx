import { useState } from 'react';
import type { Chord } from '../../core/harmony/chord.ts';
import type { KeyNumber } from '../../core/harmony/pitch.ts';
import {
  type HandName,
  type HeldKeys,
  heldKeys,
  type Voicing,
} from '../../core/voicing/voicing.ts';
import { KEY_SIZES, keyBoxes, spanAround, whiteCount } from '../parts/keyboard/keyboardGeometry.ts';
import { noteName, plainKeyName } from '../parts/keyboard/noteNames.ts';
import { ChordName } from '../parts/song/ChordName.tsx';
import { useProject } from '../parts/tool/useProject.ts';

/** The keys of one hand with a key taken up or let go. */
export function withKeyToggled(held: HeldKeys, hand: HandName, key: KeyNumber): HeldKeys {
  const keys = held[hand];
  const toggled = keys.includes(key) ? keys.filter((each) => each !== key) : [...keys, key];
  return { ...held, [hand]: toggled.toSorted((a, b) => a - b) };
}

/** A large keyboard on which the keys of one hand are chosen for one chord; what is chosen is pinned. */
export function KeyChooser({
  chord,
  voicing,
  onKeys,
  onClose,
}: {
  readonly chord: Chord;
  readonly voicing: Voicing;
  readonly onKeys: (held: HeldKeys) => void;
  readonly onClose: () => void;
}) {
  const [hand, setHand] = useState<HandName>('right');
  const settings = useProject((project) => project.voicing);
  const held = heldKeys(voicing);
  const [lowest, highest] =
    hand === 'right'
      ? [settings.rightLowest, settings.rightHighest]
      : [settings.leftLowest, settings.leftHighest];
  const span = spanAround([lowest, highest, ...held[hand]]);
  const whites = whiteCount(span);
  const percent = (keys: number) => `${(100 * keys) / whites}%`;
  return (
    <section className="keyboard-chooser" aria-label="Choose the keys">
      <div className="row">
        <h3>
          Keys of <ChordName chord={chord} />
        </h3>
        <div className="keyboard-which" role="group" aria-label="Hand">
          {(['left', 'right'] as const).map((each) => (
            <button
              type="button"
              key={each}
              aria-pressed={each === hand}
              onClick={() => setHand(each)}
            >
              {each === 'left' ? 'Left hand' : 'Right hand'}
            </button>
          ))}
        </div>
        <span className="hint">Tap keys to hold or to leave them. What you choose is pinned.</span>
        <button type="button" onClick={onClose}>
          Done
        </button>
      </div>
      <div className="keyboard-large" role="group" aria-label={`Keys of the ${hand} hand`}>
        {keyBoxes(span).map((box) => {
          const isHeld = held[hand].includes(box.key);
          return (
            <button
              type="button"
              key={box.key}
              className={box.isBlack ? 'keyboard-key keyboard-key-black' : 'keyboard-key'}
              aria-pressed={isHeld}
              aria-label={plainKeyName(box.key)}
              style={{
                left: percent(box.x),
                width: percent(box.width),
                height: percent((whites * box.length) / KEY_SIZES.whiteLength),
              }}
              onClick={() => onKeys(withKeyToggled(held, hand, box.key))}
            >
              {isHeld && (
                <span className={`keyboard-held keyboard-held-${hand}`}>
                  {noteName(box.key, chord)}
                </span>
              )}
            </button>
          );
        })}
      </div>
    </section>
  );
}
