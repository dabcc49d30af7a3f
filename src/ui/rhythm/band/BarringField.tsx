import { useMemo, useState } from 'react';
import type { OpenedBand } from '../../../app/bandImport.ts';
import { openedAnew } from '../../../app/bandImport.ts';
import type { TrackRole } from '../../../core/rhythm/band.ts';
import { type Barring, crossedOne, oneEvidence } from '../../../core/rhythm/bandMeter.ts';
import { beatStarts, formatMeter, type MeterError, parseMeter } from '../../../core/time/meter.ts';
import { meterSentence } from '../../parts/chart/chartMessages.ts';
import { barringChange, crossingWords, evidenceWords } from './barringWords.ts';

/** As the file is written. */
function writtenBarring({ band }: OpenedBand): Barring {
  return { meter: band.bars[0]!.meter, oneTick: 0, speed: 1 };
}

/**
 * Where the bars of a band lie, to be put right: the one, the meter, the speed; with what speaks for each beat
 * being the one, before and after.
 */
export function BarringField({
  file,
  opened,
  roles,
  onOpened,
}: {
  /** The band as its file has it. */
  readonly file: OpenedBand;
  /** The band as it is barred now. */
  readonly opened: OpenedBand;
  readonly roles: readonly TrackRole[];
  readonly onOpened: (opened: OpenedBand) => void;
}) {
  const [barring, setBarring] = useState<Barring>();
  const [typed, setTyped] = useState<string>();
  const [problem, setProblem] = useState<MeterError>();
  const { meter } = opened.band.bars[0]!;
  const evidence = useMemo(
    () => oneEvidence(opened.band, roles, meter),
    [opened.band, roles, meter],
  );
  const crossed = crossedOne(evidence);
  const bar = (change: Partial<Barring>) => {
    const next = { ...(barring ?? writtenBarring(file)), ...change };
    setBarring(next);
    onOpened(openedAnew(file, next));
  };
  const oneOn = (beat: number) => {
    const now = barring ?? writtenBarring(file);
    bar({ oneTick: now.oneTick + (beatStarts(meter)[beat] ?? 0) / now.speed });
  };
  const readMeter = (text: string) => {
    setTyped(text);
    const read = parseMeter(text);
    setProblem(read.ok ? undefined : read.error);
    if (read.ok) bar({ meter: read.value });
  };
  return (
    <details className="band-barring" open={crossed !== undefined || barring !== undefined}>
      <summary>
        {crossingWords(crossed) ??
          (barring ? barringChange(barring, file.band.bars[0]!.meter) : 'Put the bars right')}
      </summary>
      <div className="band-barring-fields">
        <label>
          <span>The one is on the file’s beat</span>
          <select value="" onChange={(event) => oneOn(Number(event.target.value))}>
            <option value="">as it is</option>
            {evidence.map((share, beat) =>
              beat === 0 ? null : (
                <option key={beat} value={beat}>
                  {beat + 1} ({Math.round(100 * share)} %)
                </option>
              ),
            )}
          </select>
        </label>
        <label>
          <span>Bars of</span>
          <input
            type="text"
            value={typed ?? formatMeter(meter)}
            aria-invalid={problem !== undefined}
            onChange={(event) => readMeter(event.target.value)}
            onBlur={() => {
              setTyped(undefined);
              setProblem(undefined);
            }}
          />
        </label>
        <div className="choice" role="group" aria-label="Felt speed">
          {([0.5, 1, 2] as const).map((speed) => (
            <button
              key={speed}
              type="button"
              aria-pressed={(barring?.speed ?? 1) === speed}
              onClick={() => bar({ speed })}
            >
              {speed === 1 ? 'as written' : speed === 2 ? 'twice as fast' : 'half as fast'}
            </button>
          ))}
        </div>
        {barring && (
          <button
            type="button"
            onClick={() => {
              setBarring(undefined);
              onOpened(file);
            }}
          >
            As in the file
          </button>
        )}
      </div>
      <p className="hint">What speaks for a beat being the one: {evidenceWords(evidence)}</p>
      {problem && <p role="alert">{meterSentence(problem)}</p>}
    </details>
  );
}
