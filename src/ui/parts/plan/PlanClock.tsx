import './planClock.css';
import { useEffect, useState } from 'react';
import type { PlanItem } from '../../../core/practice/plan.ts';
import { Icon } from '../../kit/Icon.tsx';
import { useParts } from '../tool/parts.ts';
import { useProject, useView } from '../tool/useProject.ts';
import { leaveLine, planClockText, secondsLeft, startLine } from './planLine.ts';
import { itemWords } from './planWords.ts';
import { usePlanItems } from './usePlanItems.ts';

const LOOK_MS = 500;

function useNowMs(): number {
  const [nowMs, setNow] = useState(Date.now);
  useEffect(() => {
    const look = setInterval(() => setNow(Date.now()), LOOK_MS);
    return () => clearInterval(look);
  }, []);
  return nowMs;
}

/** What a line is called and how long it takes, on the button that leads to it. */
function nextWords(item: PlanItem, title: string): string {
  return item.kind === 'rest' ? `Next: rest, ${item.minutes} min` : `Next: ${title}`;
}

function Line({ index, begunAtMs }: { readonly index: number; readonly begunAtMs: number }) {
  const parts = useParts();
  const named = useProject((project) => project);
  const items = usePlanItems();
  const nowMs = useNowMs();
  const [item, next] = [items[index], items[index + 1]];
  if (!item) return null;
  const title = itemWords(item, named);
  const left = secondsLeft(item.minutes, begunAtMs, Math.max(nowMs, begunAtMs));
  const isOver = left === 0;
  return (
    <section className="practice-clock" aria-label="Plan">
      <span>
        <b>
          {index + 1} of {items.length}
        </b>{' '}
        {title}
      </span>
      <span role="timer" className="practice-clock-left">
        {isOver ? '' : `${planClockText(left)} left`}
      </span>
      <span role="status">{isOver && (next ? 'The time is up.' : 'That was the plan.')}</span>
      {next && (
        <button
          type="button"
          className={isOver ? 'strong' : undefined}
          onClick={() => startLine(parts, items, index + 1, Date.now())}
        >
          {nextWords(next, itemWords(next, named))}
        </button>
      )}
      <button
        type="button"
        className="quiet"
        aria-label="Leave the plan"
        onClick={() => leaveLine(parts)}
      >
        <Icon name="cross" />
      </button>
    </section>
  );
}

/** The line of the plan that is practised: how much of its time is left, and the line after it, offered at any time and never forced. */
export function PlanClock() {
  const line = useView((state) => state.plan.line);
  return line ? <Line {...line} /> : null;
}
