import { Icon } from '../kit/Icon.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { PlayedArrangement } from '../parts/transport/ArrangementButton.tsx';
import { goToSectionBeside } from './goToSection.ts';

/** While the song plays: large buttons for the section before, the start of this one and the next, and for its key and level. */
export function SectionSteps() {
  const parts = useParts();
  return (
    <div
      className="practice-steps"
      role="group"
      aria-label="While it plays; sections change at the next bar line"
    >
      <button type="button" onClick={() => goToSectionBeside(parts, -1)}>
        <Icon name="left" /> Section before
      </button>
      <button type="button" onClick={() => goToSectionBeside(parts, 0)}>
        Start of section
      </button>
      <button type="button" onClick={() => goToSectionBeside(parts, 1)}>
        Next section <Icon name="right" />
      </button>
      <PlayedArrangement />
    </div>
  );
}
