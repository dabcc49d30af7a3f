import type { PracticeSettings } from '../core/practice/practiceSettings.ts';
import type { Project } from '../core/project.ts';
import { phrasePractice } from './phraseScore.ts';
import { isTrial, type PlayRequest } from './score.ts';
import { soundingHandsIn } from './stageScore.ts';

/** The practice settings that count where something is asked for: its own hands, a phrase and a trial with both. */
export function practiceIn(request: PlayRequest, project: Project): PracticeSettings {
  const { practice } = project;
  if (request.kind === 'phrase') return phrasePractice(practice, request);
  const hands = isTrial(request) ? 'both' : soundingHandsIn(request, project);
  return { ...practice, hands };
}
