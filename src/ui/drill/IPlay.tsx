import { INPUT_KINDS, type InputKind } from '../../app/takeInputs.ts';
import type { SoundingHands } from '../../core/practice/soundingHands.ts';
import { hearingSentence, INPUT_WORDS, TOOL_PLAYS } from '../parts/input/inputWords.ts';
import { midiSentence, useMidiState } from '../parts/input/midiHeard.ts';
import { LatencyField } from '../parts/takes/LatencyField.tsx';
import { useInput, usePlayerHearing } from '../parts/takes/useHearing.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useToolHands } from '../parts/transport/toolHands.ts';

/** Which hands I play, and what the tool plays then. */
const MINE: readonly {
  readonly words: string;
  readonly tool: SoundingHands;
  readonly fits: readonly SoundingHands[];
}[] = [
  { words: 'Left', tool: 'right', fits: ['right'] },
  { words: 'Right', tool: 'left', fits: ['left'] },
  { words: 'Both', tool: 'none', fits: ['both', 'none'] },
];

function MyHands() {
  const { hands, setHands } = useToolHands();
  return (
    <>
      <div className="takes-hands" role="group" aria-label="Hands I play">
        {MINE.map(({ words, tool, fits }) => (
          <button
            key={words}
            type="button"
            aria-pressed={fits.includes(hands)}
            onClick={() => setHands(tool)}
          >
            {words}
          </button>
        ))}
      </div>
      <p className="hint">{TOOL_PLAYS[hands]}</p>
    </>
  );
}

/** What is to be known of an input; of MIDI, once it is open, which instrument is heard, or that none is any more. */
function InputHint({ input }: { readonly input: InputKind }) {
  const midi = useMidiState();
  const heard = input === 'midi' && midi.status === 'open' ? midiSentence(midi) : undefined;
  return (
    <p className="hint" role="status">
      {heard ?? INPUT_WORDS[input].hint}
    </p>
  );
}

/** Which hands I play and what I am heard with. */
export function IPlay() {
  const { view, playingTakes, latencyCheck } = useParts();
  const input = useInput();
  const { problem } = usePlayerHearing();
  const choose = (value: string) => {
    const kind = INPUT_KINDS.find((each) => each === value);
    latencyCheck.cancel();
    view.set({ hearing: { ...view.snapshot().hearing, input: kind ?? 'nothing' } });
    playingTakes.forget();
    if (playingTakes.listenAnew()) return;
    if (kind && kind !== 'pads') void playingTakes.tryInput(kind);
  };
  return (
    <fieldset className="practice-fields">
      <legend>I play</legend>
      <MyHands />
      <label className="practice-choice">
        <span>Heard by</span>
        <select value={input ?? 'nothing'} onChange={(event) => choose(event.target.value)}>
          <option value="nothing">nothing: not measured</option>
          {INPUT_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {INPUT_WORDS[kind].name}
            </option>
          ))}
        </select>
      </label>
      {input && !problem && <InputHint input={input} />}
      <p className="practice-problem" role="status">
        {input && problem && hearingSentence(problem, input)}
      </p>
      {input && <LatencyField kind={input} />}
    </fieldset>
  );
}
