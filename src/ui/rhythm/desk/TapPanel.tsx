import { useMemo, useState } from 'react';
import { countSyllables } from '../../../core/rhythm/counts.ts';
import { type Pattern, patternSteps } from '../../../core/rhythm/pattern.ts';
import { tempoBeatTicks } from '../../../core/time/meter.ts';
import { secondsPerTick } from '../../../core/time/tempoMap.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { MidiButton, TapsOn } from './TapMidi.tsx';
import { TapOutcome } from './TapOutcome.tsx';
import { TapPads } from './TapPads.tsx';
import { TapStrip } from './TapStrip.tsx';
import { TargetField } from './TargetField.tsx';
import type { TapManner, TapRun } from './tapResult.ts';
import { sourceKey, targetOfKey } from './targets.ts';
import { type Tapping, useTapping } from './useTapping.ts';

type Run = Omit<TapRun, 'firstTick'>;

const MANNERS: readonly (readonly [TapManner, string])[] = [
  ['click', 'To the click'],
  ['free', 'Free'],
];

const EXPLAINED: Readonly<Record<TapManner, string>> = {
  click:
    'The pattern goes round to the click. Tap one part over as many bars as you like; two fingers at once are an accent.',
  free: 'Tap the figure round and round at your own tempo, twice at least; two fingers at once are an accent.',
};

/** On which count of its bar the first tap stands. */
function FirstTap({
  pattern,
  chosen,
  onChoose,
}: {
  readonly pattern: Pattern;
  readonly chosen: Ticks;
  readonly onChoose: (tick: Ticks) => void;
}) {
  const syllables = countSyllables(pattern);
  const steps = patternSteps(pattern).filter(({ beat }) => beat.bar === 0);
  return (
    <label className="desk-first">
      First tap on{' '}
      <select value={chosen} onChange={(event) => onChoose(Number(event.target.value))}>
        {steps.map((step, i) => (
          <option key={step.at} value={step.at}>
            {step.index === 0 ? syllables[i] : `${step.beat.beat + 1} ${syllables[i]}`}
          </option>
        ))}
      </select>
    </label>
  );
}

function Running({
  pattern,
  tapping,
  onDone,
}: {
  readonly pattern: Pattern;
  readonly tapping: Tapping;
  readonly onDone: () => void;
}) {
  const bpm = useHeardTempo();
  const { taps, running, start } = tapping;
  const secPerTick = secondsPerTick({ bpm, beatTicks: tempoBeatTicks(pattern.meter) });
  const places = taps.map(({ atSec }) => atSec / secPerTick);
  return (
    <>
      {running === 'click' && <TapStrip grid={pattern} places={places} strokes={[]} />}
      <div className="desk-tapping">
        <TapPads tapping={tapping} />
        <div className="desk-tap-ends">
          <p role="status">{taps.length === 1 ? '1 tap' : `${taps.length} taps`}</p>
          <button type="button" className="strong" onClick={onDone}>
            Done
          </button>
          <button type="button" onClick={() => running && start(running)}>
            From the start
          </button>
        </div>
      </div>
    </>
  );
}

/** What is tapped first: the band's first part where it has one. */
function firstTarget({ sources }: Pattern): string {
  return sources[0] ? sourceKey(sources[0].id) : 'new snare';
}

/** A rhythm is tapped on two pads, two keys or a MIDI keyboard, folded, and written into a hand or the band. */
export function TapPanel({ pattern }: { readonly pattern: Pattern }) {
  const [key, setKey] = useState(() => firstTarget(pattern));
  const [manner, setManner] = useState<TapManner>('click');
  const [firstTick, setFirstTick] = useState<Ticks>(0);
  const [run, setRun] = useState<Run>();
  const tapping = useTapping(pattern);
  const named = targetOfKey(pattern, key);
  const whole = useMemo(() => run && { ...run, firstTick }, [run, firstTick]);
  if (tapping.running)
    return <Running pattern={pattern} tapping={tapping} onDone={() => setRun(tapping.finish())} />;
  const first = <FirstTap pattern={pattern} chosen={firstTick} onChoose={setFirstTick} />;
  if (whole)
    return (
      <TapOutcome
        pattern={pattern}
        named={named}
        run={whole}
        firstTap={whole.manner === 'free' && first}
        onRun={setRun}
        onAgain={() => tapping.start(whole.manner)}
        onWritten={(written) => {
          setKey(written);
          setRun(undefined);
        }}
      />
    );
  return (
    <>
      <div className="desk-line">
        <TargetField pattern={pattern} chosen={named.key} onChoose={setKey} />
        <div role="group" aria-label="How it is tapped" className="pattern-buttons">
          {MANNERS.map(([each, name]) => (
            <button
              key={each}
              type="button"
              aria-pressed={manner === each}
              onClick={() => setManner(each)}
            >
              {name}
            </button>
          ))}
        </div>
        {manner === 'free' && first}
        <button type="button" className="strong" onClick={() => tapping.start(manner)}>
          Start tapping
        </button>
        <MidiButton />
      </div>
      <p className="desk-note" role="status">
        {EXPLAINED[manner]} <TapsOn />
      </p>
    </>
  );
}
