import type { BandTrack } from '../../../core/rhythm/band.ts';

/** General MIDI's sixteen families of eight programs each, as musicians call them (GM Level 1). */
const FAMILIES = [
  'piano',
  'bells and mallets',
  'organ',
  'guitar',
  'bass',
  'solo strings',
  'strings and choir',
  'brass',
  'reeds',
  'flutes',
  'lead synthesiser',
  'pad',
  'synthesiser effects',
  'plucked and fiddle',
  'percussion',
  'sound effects',
] as const;

const NAMES = ['C', 'D♭', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'] as const;

function keyName(keyNumber: number): string {
  return `${NAMES[keyNumber % 12]}${Math.floor(keyNumber / 12) - 1}`;
}

/** What plays a track: a drum kit, or the family of its program. */
export function instrumentName({ isDrums, program }: BandTrack): string {
  return isDrums ? 'drum kit' : (FAMILIES[program >> 3] ?? 'piano');
}

/** A track in a line: its instrument, from which key to which, how many notes. */
export function trackFacts(track: BandTrack): string {
  const keys = track.notes.map(({ keyNumber }) => keyNumber);
  const lowest = keys.reduce((a, b) => Math.min(a, b), 127);
  const highest = keys.reduce((a, b) => Math.max(a, b), 0);
  const range = track.isDrums ? [] : [`${keyName(lowest)}–${keyName(highest)}`];
  const count = track.notes.length;
  return [instrumentName(track), ...range, `${count} ${count === 1 ? 'note' : 'notes'}`].join(', ');
}

/** A track's name as the file gives it, or else its instrument and number. */
export function trackName(track: BandTrack, place: number): string {
  return track.name.trim() || `Track ${place + 1}`;
}

/** How many of a track's notes begin in each of so many equal stretches of the music, as shares of the fullest. */
export function trackDensity(
  { notes }: Pick<BandTrack, 'notes'>,
  lengthTicks: number,
  stretches: number,
): number[] {
  const counts = Array.from({ length: stretches }, () => 0);
  for (const { startTick } of notes)
    counts[Math.min(stretches - 1, Math.floor((startTick * stretches) / lengthTicks))]!++;
  const most = Math.max(1, ...counts);
  return counts.map((count) => count / most);
}
