import { useEffect, useMemo } from 'react';
import type { Proposal } from '../../../app/bandImport.ts';
import type { Playback } from '../../../app/playback.ts';
import { isTrial, type PatternRequest } from '../../../app/score.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { usePlayback } from '../../parts/tool/useProject.ts';

/** The id of a pattern that is proposed; no pattern of a project has it. */
export const PROPOSAL_ID = 'proposal';

function hearsProposal(playback: Pick<Playback, 'state'>): boolean {
  const state = playback.state();
  if (state.status === 'stopped' || state.request.kind !== 'pattern') return false;
  return isTrial(state.request) && state.request.patternId === PROPOSAL_ID;
}

/**
 * Hears a proposed pattern at the band's tempo before it is taken; what is heard follows every other
 * choice, and ends when the proposal leaves the page.
 */
export function useProposalTrial(proposal: Proposal | undefined) {
  const { playback } = useParts();
  usePlayback();
  const request = useMemo<PatternRequest | undefined>(
    () =>
      proposal && {
        kind: 'pattern',
        patternId: PROPOSAL_ID,
        pattern: proposal.pattern,
        bpm: proposal.bpm,
      },
    [proposal],
  );
  useEffect(() => {
    if (request) playback.turnTo(request);
  }, [playback, request]);
  useEffect(
    () => () => {
      if (hearsProposal(playback)) playback.stop();
    },
    [playback],
  );
  const isHeard = hearsProposal(playback);
  return {
    isHeard,
    toggle: () => {
      if (isHeard) playback.stop();
      else if (request) void playback.play(request);
    },
  };
}
