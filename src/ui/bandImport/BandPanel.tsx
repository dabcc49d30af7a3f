import './bandImport.css';
import { useMemo, useState } from 'react';
import {
  type BandChoice,
  type OpenedBand,
  type Proposal,
  type ProposalError,
  proposePattern,
} from '../../app/bandImport.ts';
import { ok, type Result } from '../../core/result.ts';
import type { Source } from '../../core/rhythm/sources.ts';
import { PatternPicture } from '../patternGrid/PatternPicture.tsx';
import { usePatternActions } from '../patternGrid/usePatterns.ts';
import { useHandLimits } from '../workshop/useHandLimits.ts';
import { BarChoice } from './BarChoice.tsx';
import { proposalSentence } from './bandMessages.ts';
import { FirstHandsWords } from './FirstHandsWords.tsx';
import { foldWords } from './foldWords.ts';
import { RuleTable } from './RuleTable.tsx';
import { TrackList } from './TrackList.tsx';
import { PROPOSAL_ID, useProposalTrial } from './useProposalTrial.ts';

type Props = {
  readonly opened: OpenedBand;
  /** What the pattern will be called. */
  readonly name: string;
  readonly onDone: () => void;
};

const NO_SOURCES: readonly Source[] = [];

function Outcome({
  proposal,
  isFuller,
  onFuller,
  onTake,
}: {
  readonly proposal: Result<Proposal, ProposalError>;
  readonly isFuller: boolean;
  readonly onFuller: (isFuller: boolean) => void;
  readonly onTake: (proposal: Proposal) => void;
}) {
  const trial = useProposalTrial(proposal.ok ? proposal.value : undefined);
  if (!proposal.ok)
    return (
      <p role="status" className="band-problem">
        {proposalSentence(proposal.error)}
      </p>
    );
  const { pattern, first, fold, bpm } = proposal.value;
  return (
    <>
      <div className="band-found">
        <p role="status">{[...foldWords(fold), `tempo ${Math.round(bpm)}`].join(' · ')}</p>
        <FirstHandsWords {...{ pattern, first, bpm, isFuller, onFuller }} />
        <button type="button" aria-pressed={trial.isHeard} onClick={trial.toggle}>
          Hear it
        </button>
        <button type="button" className="strong" onClick={() => onTake(proposal.value)}>
          Take this pattern
        </button>
      </div>
      <PatternPicture pattern={pattern} label={`The hands for ${pattern.name}`} />
    </>
  );
}

/** A band that was opened: what each track is, which bars count, what feeds which hand, and what comes of it. */
export function BandPanel({ opened, name, onDone }: Props) {
  const { add } = usePatternActions();
  const { band } = opened;
  const [choice, setChoice] = useState<BandChoice>(opened.choice);
  const change = (parts: Partial<BandChoice>) => setChoice({ ...choice, ...parts });
  const limits = useHandLimits();
  const [isFuller, setFuller] = useState(false);
  const proposal = useMemo(() => {
    const proposed = proposePattern(band, choice, { id: PROPOSAL_ID, name }, limits);
    if (!proposed.ok || !isFuller) return proposed;
    const { pattern, first } = proposed.value;
    return ok({ ...proposed.value, pattern: { ...pattern, ...first.fuller } });
  }, [band, choice, name, limits, isFuller]);
  const found = proposal.ok ? proposal.value : undefined;
  return (
    <>
      <div className="band-choices">
        <section aria-labelledby="band-tracks-title">
          <h3 id="band-tracks-title">Who plays</h3>
          <TrackList
            tracks={band.tracks}
            roles={choice.roles}
            onRoles={(roles) => change({ roles })}
          />
        </section>
        <section aria-labelledby="band-bars-title">
          <h3 id="band-bars-title">Which bars</h3>
          <BarChoice
            band={band}
            choice={choice}
            steadiest={opened.choice}
            fold={found?.fold}
            onChange={change}
          />
        </section>
        <section aria-labelledby="band-rules-title">
          <h3 id="band-rules-title">Into which hand</h3>
          <RuleTable
            sources={found?.pattern.sources ?? NO_SOURCES}
            rules={choice.rules}
            onRules={(rules) => change({ rules })}
          />
        </section>
      </div>
      <Outcome
        proposal={proposal}
        isFuller={isFuller}
        onFuller={setFuller}
        onTake={({ pattern }) => {
          add(pattern, 'pattern from a band');
          onDone();
        }}
      />
    </>
  );
}
