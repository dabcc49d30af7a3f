import { type ReactNode, useMemo, useState } from 'react';
import { feelOf } from '../../../core/rhythm/character.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { setSwing } from '../../../state/edits/pattern.ts';
import { setTempo } from '../../../state/edits/song.ts';
import { type WritingManner, writeRhythm } from '../../../state/edits/writeRhythm.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { TapStrip } from './TapStrip.tsx';
import { type TapResult, type TapRun, tapResult } from './tapResult.ts';
import { tapProblemSentence, tapWords } from './tapWords.ts';
import { type NamedTarget, partOf, sourceKey, struckBy } from './targets.ts';

type Props = {
  readonly pattern: Pattern;
  /** What the taps were for. */
  readonly named: NamedTarget;
  readonly run: TapRun;
  /** Chooses the count of the first tap, where that is needed. */
  readonly firstTap: ReactNode;
  /** Reads the same taps in another way. */
  readonly onRun: (run: TapRun) => void;
  readonly onAgain: () => void;
  /** The rhythm is written; the key is that of what it was written into. */
  readonly onWritten: (key: string) => void;
};

/** Half and double, where the taps were read at the wrong tempo. */
const OTHER_TEMPOS = [
  { name: 'Half as fast', times: 0.5 },
  { name: 'Twice as fast', times: 2 },
] as const;

function isEmpty({ left, right, sources }: Pattern): boolean {
  return left.length + right.length + sources.length === 0;
}

/** What the taps came to: drawn, said, and written into the pattern in one change. */
export function TapOutcome(props: Props) {
  const { pattern, named, run, firstTap, onRun, onAgain } = props;
  const part = partOf(pattern, named.target) ?? 'percussion';
  const result = useMemo(
    () => tapResult(run, pattern, { id: 'tapped', name: named.spoken, part }),
    [run, pattern, named.spoken, part],
  );
  return (
    <div className="desk-outcome">
      {result.ok && (
        <TapStrip
          grid={result.value.groove}
          places={result.value.places}
          strokes={result.value.groove.sources[0]?.strokes ?? []}
        />
      )}
      <div className="desk-line">
        <p role="status" className={result.ok ? 'desk-says' : 'desk-says desk-problem'}>
          {result.ok ? `${tapWords(result.value)}.` : tapProblemSentence(result.error)}
        </p>
        {firstTap}
        {run.manner === 'free' &&
          OTHER_TEMPOS.map(({ name, times }) => (
            <button
              key={name}
              type="button"
              onClick={() =>
                onRun({ ...run, bpm: (result.ok ? result.value.bpm : run.bpm) * times })
              }
            >
              {name}
            </button>
          ))}
        {result.ok && <Writing {...props} result={result.value} />}
        <button type="button" onClick={onAgain}>
          Tap again
        </button>
      </div>
    </div>
  );
}

/** The buttons that write a tapped rhythm, and what else it says: its swing, its tempo. */
function Writing({ pattern, named, result, onWritten }: Props & { readonly result: TapResult }) {
  const { store } = useParts();
  const { groove, bpm } = result;
  const isSwung = feelOf(groove) === 'swung' && feelOf(pattern) === 'straight';
  const [swings, setSwings] = useState(isEmpty(pattern));
  const write = (manner: WritingManner) => {
    const strokes = groove.sources[0]?.strokes ?? [];
    const rhythm = { bars: groove.bars, divisions: groove.divisions, strokes };
    const written = writeRhythm(pattern.id, named.target, rhythm, manner);
    const swung = setSwing(pattern.id, groove.swing);
    store.edit((project) => (isSwung && swings ? swung(written(project)) : written(project)), {
      label: `tap ${named.spoken}`,
    });
    onWritten(
      writtenKey(
        named,
        store.snapshot().patterns.find(({ id }) => id === pattern.id),
      ),
    );
  };
  const isStruck = struckBy(pattern, named.target).length > 0;
  return (
    <>
      {isSwung && (
        <label className="desk-check">
          <input
            type="checkbox"
            checked={swings}
            onChange={(event) => setSwings(event.target.checked)}
          />
          swing the pattern too
        </label>
      )}
      {result.manner === 'free' && (
        <button
          type="button"
          onClick={() => store.edit(setTempo(Math.round(bpm)), { label: 'tempo' })}
        >
          Take {Math.round(bpm)} as the song’s tempo
        </button>
      )}
      <button type="button" className="strong" onClick={() => write('replace')}>
        {isStruck ? `Replace ${named.spoken}` : `Write ${named.spoken}`}
      </button>
      {isStruck && (
        <button type="button" onClick={() => write('add')}>
          Add to it
        </button>
      )}
    </>
  );
}

/** The key of what was written into: a source that was made is one of its own from now on. */
function writtenKey({ key, target }: NamedTarget, after: Pattern | undefined): string {
  const made = target.kind === 'new-source' ? after?.sources.at(-1) : undefined;
  return made ? sourceKey(made.id) : key;
}
