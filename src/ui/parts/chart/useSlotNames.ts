import type { AnalysedChord } from '../../../core/harmony/analysis.ts';
import type { Section } from '../../../core/song/song.ts';
import { printedNumerals } from '../song/chordRoleWords.ts';
import { useProject, useView } from '../tool/useProject.ts';
import type { ChordNamingChoice } from '../tool/viewState.ts';
import { chordNamingIn, NAMING_BELOW, slotName } from './chordNames.ts';
import type { SlotNames } from './printedChart.ts';

/** Names of the section's chords by slot; the numerals are those of the analysis. */
export function useSlotNames(
  section: Section,
  analysed: ReadonlyArray<AnalysedChord | undefined>,
): SlotNames {
  const key = useProject((project) => project.song.key);
  const choice = useView((state) => state.chordNaming);
  const numerals = printedNumerals(analysed, key);
  const typedIn = (naming: ChordNamingChoice) =>
    section.slots.map((slot) => slotName(slot, chordNamingIn(naming, key)));
  const printedIn = (naming: ChordNamingChoice) =>
    naming === 'numerals' ? typedIn(naming).map((name, i) => numerals[i] || name) : typedIn(naming);
  return {
    names: printedIn(choice),
    below: printedIn(NAMING_BELOW[choice]).map((name) => (name === 'N.C.' ? '' : name)),
    typed: typedIn(choice),
  };
}
