import './bandImport.css';
import { useMemo, useState } from 'react';
import { firstHands } from '../../../core/rhythm/firstHands.ts';
import { rulesForBand } from '../../../core/rhythm/handRules.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { replaceHands } from '../../../state/edits/pattern.ts';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { PatternPicture } from '../../parts/picture/PatternPicture.tsx';
import { useParts } from '../../parts/tool/parts.ts';
import { FirstHandsWords } from './FirstHandsWords.tsx';
import { RuleTable } from './RuleTable.tsx';

/** The hands of a pattern made anew from its own band: which source feeds which hand, and what comes of it. */
export function DerivePage({
  pattern,
  onClose,
}: {
  readonly pattern: Pattern;
  readonly onClose: () => void;
}) {
  const { store } = useParts();
  const [rules, setRules] = useState(() =>
    rulesForBand(pattern.sources.some(({ part }) => part === 'bass')),
  );
  const bpm = useHeardTempo();
  const limits = useHandLimits();
  const [isFuller, setFuller] = useState(false);
  const first = useMemo(
    () => firstHands(pattern, bpm, rules, limits),
    [pattern, bpm, rules, limits],
  );
  const hands = isFuller ? first.fuller : first.hands;
  const derived = { ...pattern, ...hands };
  return (
    <div className="band-page">
      <div className="band-head">
        <h2>Derive the hands again</h2>
        <span className="band-file">{pattern.name}</span>
        <span className="pattern-space" />
        <button
          type="button"
          className="strong"
          onClick={() => {
            store.edit(replaceHands(pattern.id, hands), { label: 'derive the hands again' });
            onClose();
          }}
        >
          Take these hands
        </button>
        <button type="button" onClick={onClose}>
          Leave them as they are
        </button>
      </div>
      <RuleTable sources={pattern.sources} rules={rules} onRules={setRules} />
      <div className="band-found">
        <FirstHandsWords pattern={derived} {...{ first, bpm, isFuller }} onFuller={setFuller} />
      </div>
      <PatternPicture pattern={derived} label={`New hands for ${pattern.name}`} />
    </div>
  );
}
