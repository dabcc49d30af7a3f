import { useMemo, useRef } from 'react';
import type { ByHand, PracticeDay } from '../../../core/practice/practiceDays.ts';
import { HIT_HANDS } from '../../../core/practice/practiceDays.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { useWidth } from '../../kit/useWidth.ts';
import type { Pixels } from '../grid/systemLayout.ts';
import { type HistoryPlot, historyPlot, linePath, type PlotSize, signPath } from './historyPlot.ts';
import { bpmWords, HAND_WORDS, longDay, shortDay } from './historyWords.ts';
import { msWords } from './takeWords.ts';

function sizeOf(width: Pixels): PlotSize {
  return { width, height: 176, left: 46, right: 30, top: 14, bottom: 34 };
}

function Axes({ plot, size }: { readonly plot: HistoryPlot; readonly size: PlotSize }) {
  return (
    <>
      {plot.values.map(({ value, at }) => (
        <g key={value}>
          <path
            className="takes-plot-rule"
            d={`M${size.left} ${at}H${size.width - size.right + 8}`}
          />
          <text className="takes-plot-value" x={size.left - 8} y={at}>
            {Math.round(10 * value) / 10}
          </text>
        </g>
      ))}
      {plot.days.map(({ day, at }) => (
        <text key={day} className="takes-plot-day" x={at} y={size.height - 8}>
          {shortDay(day)}
        </text>
      ))}
    </>
  );
}

function Drawing({ plot, size }: { readonly plot: HistoryPlot; readonly size: PlotSize }) {
  return (
    <svg width={size.width} height={size.height} aria-hidden="true" focusable="false">
      <Axes plot={plot} size={size} />
      {plot.goalAt !== undefined && (
        <path
          className="takes-plot-goal"
          d={`M${size.left} ${plot.goalAt}H${size.width - size.right + 8}`}
        />
      )}
      {plot.lines.map(({ hand, points }) => (
        <g key={hand} className={`takes-plot-${hand}`}>
          <path className="takes-plot-line" d={linePath(points)} />
          {points.map((point) => (
            <path key={point.day} d={signPath(hand, point)} />
          ))}
        </g>
      ))}
    </svg>
  );
}

/** One plot under its title; a sentence where there is nothing to plot. */
function Figure({
  title,
  plot,
  size,
  without,
}: {
  readonly title: string;
  readonly plot: HistoryPlot | undefined;
  readonly size: PlotSize;
  readonly without: string;
}) {
  return (
    <figure className="takes-plot" style={{ width: size.width }}>
      <figcaption>{title}</figcaption>
      {plot ? <Drawing plot={plot} size={size} /> : <p className="hint">{without}</p>}
    </figure>
  );
}

/** What the signs stand for, as far as they are seen. */
function Signs({ days }: { readonly days: readonly PracticeDay[] }) {
  const isSeen = (values: ByHand) => HIT_HANDS.filter((hand) => values[hand] !== undefined);
  const seen = new Set(
    days.flatMap((day) => [...isSeen(day.cleanBpm), ...isSeen(day.unevennessMs)]),
  );
  return (
    <ul className="takes-legend" aria-hidden="true">
      {HIT_HANDS.filter((hand) => seen.has(hand)).map((hand) => (
        <li key={hand} className={`takes-plot-${hand}`}>
          <svg width={14} height={14} focusable="false">
            <path d={signPath(hand, { x: 7, y: 7 })} />
          </svg>
          {HAND_WORDS[hand]}
        </li>
      ))}
    </ul>
  );
}

function valuesInWords(values: ByHand, words: (value: number) => string): string {
  const told = HIT_HANDS.flatMap((hand) => {
    const value = values[hand];
    return value === undefined ? [] : [`${words(value)} ${HAND_WORDS[hand]}`];
  });
  return told.length === 0 ? '–' : told.join(', ');
}

/** The same in words, for those who do not see the plots. */
function DayTable({ days }: { readonly days: readonly PracticeDay[] }) {
  return (
    <table className="visually-hidden">
      <caption>Day by day</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">Takes</th>
          <th scope="col">Fastest clean, beats a minute</th>
          <th scope="col">Uneven by</th>
        </tr>
      </thead>
      <tbody>
        {days.map(({ day, takes, cleanBpm, unevennessMs }) => (
          <tr key={day}>
            <th scope="row">{longDay(day)}</th>
            <td>{takes}</td>
            <td>{valuesInWords(cleanBpm, bpmWords)}</td>
            <td>{valuesInWords(unevennessMs, msWords)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Two plots stand side by side where each has so much room. */
const ROOM: Pixels = 300;
const GAP: Pixels = 20;

/** Over days: the tempo that was reached clean, up to the song's, and how uneven each hand was. */
export function HistoryPlots({
  days,
  goal,
}: {
  readonly days: readonly PracticeDay[];
  readonly goal: Bpm;
}) {
  const place = useRef<HTMLDivElement>(null);
  const inner = useWidth(place);
  const half = (inner - GAP) / 2;
  const size = useMemo(() => sizeOf(Math.floor(half >= ROOM ? half : inner)), [half, inner]);
  const tempo = historyPlot(
    days.map(({ day, cleanBpm }) => ({ day, values: cleanBpm })),
    size,
    { goal },
  );
  const unevenness = historyPlot(
    days.map(({ day, unevennessMs }) => ({ day, values: unevennessMs })),
    size,
    { fromZero: true },
  );
  return (
    <div ref={place} className="takes-plots">
      {inner > 0 && (
        <>
          <Figure
            title={`Fastest clean tempo; the song’s is ${bpmWords(goal)}`}
            plot={tempo}
            size={size}
            without="Nothing was clean yet, whole and played through."
          />
          <Figure
            title="Uneven by, in ms: lower is steadier"
            plot={unevenness}
            size={size}
            without="Too little was played to tell."
          />
          <Signs days={days} />
        </>
      )}
      <DayTable days={days} />
    </div>
  );
}
