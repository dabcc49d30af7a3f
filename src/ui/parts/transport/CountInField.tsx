import { setClick } from '../../../state/edits/practice.ts';
import { useParts } from '../tool/parts.ts';
import { useProject } from '../tool/useProject.ts';
import { COUNT_INS, countInWords } from './countIns.ts';

/** How long the count-in is, and whether it is clicked or spoken. */
export function CountInField() {
  const { store } = useParts();
  const click = useProject((project) => project.practice.click);
  const choose = (words: string) => {
    const chosen = COUNT_INS.find((each) => each.words === words)?.countIn;
    if (!chosen) return;
    const { countInBars, countInVoice } = chosen;
    store.edit(setClick({ countInBars, countInVoice }), { label: 'count-in' });
  };
  return (
    <label className="practice-choice">
      <span>Count-in</span>
      <select value={countInWords(click)} onChange={(event) => choose(event.target.value)}>
        {COUNT_INS.map(({ words }) => (
          <option key={words}>{words}</option>
        ))}
      </select>
    </label>
  );
}
