import type { ReactNode } from 'react';
import type { Chord } from '../../../core/harmony/chord.ts';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';

/** Where the music font keeps the signs that text fonts lack (SMuFL code points). */
const MUSIC_SIGNS: Readonly<Record<string, string>> = {
  '♭': '\uE260',
  '♮': '\uE261',
  '♯': '\uE262',
};

const SPOKEN_SIGNS: Readonly<Record<string, string>> = {
  '♭': ' flat ',
  '♮': ' natural ',
  '♯': ' sharp ',
};

function inPieces(text: string, piece: (sign: string, at: number) => ReactNode): ReactNode[] {
  return Array.from(text, (letter, at) => (letter in MUSIC_SIGNS ? piece(letter, at) : letter));
}

/** Text in which flats, naturals and sharps are drawn from the music font and read out as words. */
export function MusicText({ text }: { readonly text: string }) {
  const spoken = Array.from(text, (letter) => SPOKEN_SIGNS[letter] ?? letter).join('');
  if (spoken === text) return <>{text}</>;
  return (
    <>
      <span aria-hidden="true">
        {inPieces(text, (sign, at) => (
          <span className="sign accidental" key={at}>
            {MUSIC_SIGNS[sign]}
          </span>
        ))}
      </span>
      <span className="visually-hidden">{spoken}</span>
    </>
  );
}

/** A chord symbol as printed on the sheet; N.C. where no chord is played. */
export function ChordName({ chord }: { readonly chord: Chord | 'no-chord' }) {
  return (
    <span className="chord-name">
      {chord === 'no-chord' ? 'N.C.' : <MusicText text={formatChordSymbol(chord)} />}
    </span>
  );
}
