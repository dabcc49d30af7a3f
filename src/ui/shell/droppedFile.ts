import { readPatterns } from '../../app/patternFiles.ts';
import { isSoundFile } from '../../app/recordings.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';

/** What a file is that was dropped or pasted anywhere: a band (MIDI or sound), patterns, a song, or nothing of ours. */
export type DroppedFile =
  | { readonly kind: 'band' }
  | { readonly kind: 'patterns'; readonly family: readonly Pattern[] }
  | { readonly kind: 'song' }
  | { readonly kind: 'unknown' };

/** Tells a dropped file by its name and, where that does not say it, by what is in it. */
export async function droppedFile(file: File): Promise<DroppedFile> {
  if (isSoundFile(file) || /\.(midi?|rmi|kar)$/i.test(file.name) || /midi/i.test(file.type))
    return { kind: 'band' };
  if (!/\.json$/i.test(file.name) && !/json/.test(file.type)) return { kind: 'unknown' };
  const patterns = readPatterns(await file.text().catch(() => ''));
  return patterns.ok ? { kind: 'patterns', family: patterns.value } : { kind: 'song' };
}
