import './bandImport.css';
import { type ReactNode, useMemo, useState } from 'react';
import {
  type BandChoice,
  type OpenedBand,
  type Proposal,
  type ProposalError,
  proposePattern,
} from '../../../app/bandImport.ts';
import { ok, type Result } from '../../../core/result.ts';
import type { Source } from '../../../core/rhythm/sources.ts';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { PatternPicture } from '../../parts/picture/PatternPicture.tsx';
import { BarChoice } from './BarChoice.tsx';
import { BarringField } from './BarringField.tsx';
import { proposalSentence } from './bandMessages.ts';
import { FirstHandsWords } from './FirstHandsWords.tsx';
import { foldWords } from './foldWords.ts';
import { MapFromBand } from './MapFromBand.tsx';
import { RuleTable } from './RuleTable.tsx';
import { TakePattern } from './TakePattern.tsx';
import { TrackList } from './TrackList.tsx';
import { PROPOSAL_ID, useProposalTrial } from './useProposalTrial.ts';

type Props = {
  readonly opened: OpenedBand;
  /** The file's name, as what is made of it is called. */
  readonly name: string;
  readonly onDone: () => void;
};

const NO_SOURCES: readonly Source[] = [];

function Outcome({
  proposal,
  isFuller,
  onFuller,
  taking,
}: {
  readonly proposal: Result<Proposal, ProposalError>;
  readonly isFuller: boolean;
  readonly onFuller: (isFuller: boolean) => void;
  /** How it is taken. */
  readonly taking: ReactNode;
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
        {taking}
      </div>
      <PatternPicture pattern={pattern} label={`The hands for ${pattern.name}`} />
    </>
  );
}

/** The groove of some bars: who plays, which bars, into which hand, and what comes of it. */
function Groove({
  file,
  name,
  opened,
  choice,
  proposal,
  fuller,
  onOpened,
  onChoice,
  onDone,
}: {
  readonly file: OpenedBand;
  readonly name: string;
  readonly opened: OpenedBand;
  readonly choice: BandChoice;
  readonly proposal: Result<Proposal, ProposalError>;
  readonly fuller: readonly [boolean, (isFuller: boolean) => void];
  readonly onOpened: (opened: OpenedBand) => void;
  readonly onChoice: (parts: Partial<BandChoice>) => void;
  readonly onDone: () => void;
}) {
  const { band } = opened;
  const found = proposal.ok ? proposal.value : undefined;
  return (
    <>
      <div className="band-choices">
        <section aria-labelledby="band-tracks-title">
          <h3 id="band-tracks-title">Who plays</h3>
          <TrackList
            band={band}
            roles={choice.roles}
            range={choice}
            onRoles={(roles) => onChoice({ roles })}
          />
        </section>
        <section aria-labelledby="band-bars-title">
          <h3 id="band-bars-title">Which bars</h3>
          <BarChoice
            band={band}
            choice={choice}
            steadiest={opened.choice}
            fold={found?.fold}
            onChange={onChoice}
          />
          <BarringField file={file} opened={opened} roles={choice.roles} onOpened={onOpened} />
        </section>
        <section aria-labelledby="band-rules-title">
          <h3 id="band-rules-title">Into which hand</h3>
          <RuleTable
            sources={found?.pattern.sources ?? NO_SOURCES}
            rules={choice.rules}
            onRules={(rules) => onChoice({ rules })}
          />
        </section>
      </div>
      <Outcome
        proposal={proposal}
        isFuller={fuller[0]}
        onFuller={fuller[1]}
        taking={found && <TakePattern pattern={found.pattern} name={name} onDone={onDone} />}
      />
    </>
  );
}

/** What is made of a band: a pattern of some of its bars, or the map of the whole song. */
const VIEWS = [
  { view: 'groove', name: 'A groove for the hands' },
  { view: 'map', name: 'The map of the song' },
] as const;

/** A band that was opened, and what is made of it. */
export function BandPanel({ opened: file, name, onDone }: Props) {
  const [view, setView] = useState<(typeof VIEWS)[number]['view']>('groove');
  const [opened, setOpened] = useState(file);
  const [choice, setChoice] = useState<BandChoice>(opened.choice);
  const limits = useHandLimits();
  const [isFuller, setFuller] = useState(false);
  const { band } = opened;
  const proposal = useMemo(() => {
    const proposed = proposePattern(band, choice, { id: PROPOSAL_ID, name }, limits);
    if (!proposed.ok || !isFuller) return proposed;
    const { pattern, first } = proposed.value;
    return ok({ ...proposed.value, pattern: { ...pattern, ...first.fuller } });
  }, [band, choice, name, limits, isFuller]);
  return (
    <>
      <div className="choice" role="group" aria-label="What to make of the band">
        {VIEWS.map((each) => (
          <button
            key={each.view}
            type="button"
            aria-pressed={each.view === view}
            onClick={() => setView(each.view)}
          >
            {each.name}
          </button>
        ))}
      </div>
      {view === 'groove' ? (
        <Groove
          file={file}
          name={`${name}, bars ${choice.firstBar + 1}–${choice.lastBar + 1}`}
          opened={opened}
          choice={choice}
          proposal={proposal}
          fuller={[isFuller, setFuller]}
          onOpened={(next) => {
            setOpened(next);
            const { firstBar, lastBar } = next.choice;
            setChoice({ ...choice, firstBar, lastBar });
          }}
          onChoice={(parts) => setChoice({ ...choice, ...parts })}
          onDone={onDone}
        />
      ) : (
        <MapFromBand
          opened={opened}
          roles={choice.roles}
          name={name}
          pattern={proposal.ok ? proposal.value.pattern : undefined}
          onDone={onDone}
        />
      )}
    </>
  );
}
