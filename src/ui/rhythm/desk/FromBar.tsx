import { useState } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { formatMeter, sameMeter } from '../../../core/time/meter.ts';
import {
  clearPatternFrom,
  type PatternPlace,
  setPatternFrom,
} from '../../../state/edits/sectionPatterns.ts';
import { Choice } from '../../kit/Choice.tsx';
import { Fits } from '../../parts/picture/Fits.tsx';
import { type BarPlays, barsFor, type SectionPlays } from '../../parts/picture/sectionPlays.ts';
import { useParts } from '../../parts/tool/parts.ts';

const EVERY_TIME = 'every time';

/** What a bar's button says to those who hear it. */
function barLabel({ bar, plays, begins }: BarPlays, newMeter: string | undefined): string {
  const meter = newMeter === undefined ? '' : `, ${newMeter}`;
  if (begins) return `From bar ${bar + 1}${meter}, begins here`;
  return `From bar ${bar + 1}${meter}${plays ? ', goes on here' : ''}`;
}

/** The meter of a bar where it is not that of the bar before. */
function newMeterAt(bars: readonly BarPlays[], bar: number): string | undefined {
  const [here, before] = [bars[bar]!.meter, bars[bar - 1]?.meter];
  return before && sameMeter(here, before) ? undefined : formatMeter(here);
}

/**
 * The bars of a section: a pattern is played from the one that is pressed, every time or in one playing
 * only; pressed once more, what was played before goes on. For a bar of another meter it offers versions.
 */
export function FromBar({
  pattern,
  stand: { section, returns },
}: {
  readonly pattern: Pattern;
  readonly stand: SectionPlays;
}) {
  const { store } = useParts();
  const [time, setTime] = useState(EVERY_TIME);
  const [unfit, setUnfit] = useState<BarPlays>();
  const entry = returns.find((each) => String(each.time) === time)?.entry;
  const place: PatternPlace = entry
    ? { kind: 'playing', id: entry.id }
    : { kind: 'section', id: section.id };
  const press = (bar: BarPlays) => {
    setUnfit(undefined);
    if (bar.begins)
      store.edit(clearPatternFrom(place, bar.bar), { label: 'pattern from a bar on' });
    else if (sameMeter(bar.meter, pattern.meter))
      store.edit(setPatternFrom(place, bar.bar, pattern.id), { label: 'pattern from a bar on' });
    else setUnfit(bar);
  };
  const bars = barsFor(section, entry, pattern);
  return (
    <div className="desk-from">
      <p>“{pattern.name}” is played from the bar that you press.</p>
      {returns.length > 0 && (
        <Choice
          label={`When in ${section.name}`}
          options={[EVERY_TIME, ...returns.map((each) => String(each.time))].map(
            (each) => [each, each === EVERY_TIME ? 'Every time' : `Time ${each} only`] as const,
          )}
          chosen={time}
          onChoose={(next) => {
            setTime(next);
            setUnfit(undefined);
          }}
        />
      )}
      <div className="desk-bars" role="group" aria-label={`Bars of ${section.name}`}>
        {bars.map((bar) => (
          <button
            key={bar.bar}
            type="button"
            aria-label={barLabel(bar, newMeterAt(bars, bar.bar))}
            aria-pressed={bar.begins}
            data-plays={bar.plays || undefined}
            data-meter={newMeterAt(bars, bar.bar)}
            disabled={bar.bar === 0 && bar.begins}
            onClick={() => press(bar)}
          >
            {bar.bar + 1}
          </button>
        ))}
      </div>
      {unfit && (
        <Fits
          key={unfit.bar}
          pattern={pattern}
          meter={unfit.meter}
          where={`Bar ${unfit.bar + 1}`}
          assign={(version) => setPatternFrom(place, unfit.bar, version)}
          onTaken={() => setUnfit(undefined)}
        />
      )}
    </div>
  );
}
