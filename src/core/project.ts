import type { PracticeSettings } from './practice/practiceSettings.ts';
import type { Pattern } from './rhythm/pattern.ts';
import type { Song } from './song/song.ts';
import type { VoicingSettings } from './voicing/voicing.ts';

/** The saved, undoable whole. Sections and practice settings name patterns by id. */
export type Project = {
  readonly id: string;
  readonly song: Song;
  readonly patterns: readonly Pattern[];
  readonly voicing: VoicingSettings;
  readonly practice: PracticeSettings;
};
