import { useState } from 'react';
import type { BandChoice } from '../../../app/bandImport.ts';
import type { Band } from '../../../core/rhythm/band.ts';
import type { Fold } from '../../../core/rhythm/fold.ts';
import { PERIODS } from '../../../core/rhythm/foldPeriod.ts';
import type { BandBars } from '../../../core/rhythm/strokes.ts';
import { BarStrip } from './BarStrip.tsx';

type Props = {
  readonly band: Band;
  readonly choice: BandChoice;
  readonly steadiest: BandBars;
  readonly fold: Fold | undefined;
  readonly onChange: (parts: Partial<BandChoice>) => void;
};

const NONE: readonly number[] = [];

/** A bar by its number, counted from 1. Any number is taken: the page says where the band has no such bar. */
function BarNumber({
  label,
  bar,
  onBar,
}: {
  readonly label: string;
  readonly bar: number;
  readonly onBar: (bar: number) => void;
}) {
  const [typed, setTyped] = useState<string>();
  return (
    <label className="band-bar-number">
      <span>{label}</span>
      <input
        type="number"
        inputMode="numeric"
        min={1}
        value={typed ?? bar + 1}
        onChange={({ target }) => {
          setTyped(target.value);
          if (/^\d+$/.test(target.value)) onBar(Number(target.value) - 1);
        }}
        onBlur={() => setTyped(undefined)}
      />
    </label>
  );
}

function barsWritten(bars: number): string {
  return bars === 1 ? '1 bar' : `${bars} bars`;
}

function PeriodField({ choice, fold, onChange }: Pick<Props, 'choice' | 'fold' | 'onChange'>) {
  const found = choice.period === 'auto' && fold ? `: ${barsWritten(fold.bars)}` : '';
  return (
    <label className="band-period">
      <span>Pattern</span>
      <select
        value={choice.period}
        onChange={(event) => {
          const period = PERIODS.find((each) => String(each) === event.target.value);
          onChange({ period: period ?? 'auto' });
        }}
      >
        <option value="auto">found{found}</option>
        {PERIODS.map((period) => (
          <option key={period} value={period}>
            {barsWritten(period)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The bars that are folded into the pattern, the steadiest at first, and how many bars it has. */
export function BarChoice({ band, choice, steadiest, fold, onChange }: Props) {
  const { firstBar, lastBar } = choice;
  return (
    <>
      <BarStrip
        band={band}
        chosen={choice}
        steadiest={steadiest}
        agreement={fold?.agreement ?? NONE}
        onRange={onChange}
      />
      <div className="band-range">
        <BarNumber label="From bar" bar={firstBar} onBar={(bar) => onChange({ firstBar: bar })} />
        <BarNumber label="to bar" bar={lastBar} onBar={(bar) => onChange({ lastBar: bar })} />
      </div>
      <PeriodField choice={choice} fold={fold} onChange={onChange} />
    </>
  );
}
