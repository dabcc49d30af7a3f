import { drillBars, type TrackPassage, type TrackRequest } from '../../app/exports.ts';
import type { Project } from '../../core/project.ts';
import type { Bpm } from '../../core/time/tempoMap.ts';
import type { Arrangement } from '../../state/arrangement.ts';

/** How long a drill's track can be, in minutes. */
export const DRILL_MINUTES = [1, 2, 5, 10] as const;

/** A tempo that was chosen, which holds for the song and the passage that it was chosen for. */
type ChosenTempo = {
  readonly projectId: Project['id'];
  readonly kind: TrackPassage['kind'];
  readonly bpm: Bpm;
};

/** What is to be handed on; what is left out is as the song is practised now. */
export type HandOnChoices = Partial<
  Pick<TrackRequest, 'hands' | 'band' | 'click' | 'countInBars'>
> & {
  readonly kind: TrackPassage['kind'];
  readonly tempo?: ChosenTempo;
  readonly minutes: (typeof DRILL_MINUTES)[number];
  /** Key and level of the whole song; as it is written if left out. */
  readonly arrangement?: Arrangement;
};

/** What is chosen, for a component that shows it and lets it be changed. */
export type ChoiceProps = {
  readonly choices: HandOnChoices;
  readonly onChoose: (change: Partial<HandOnChoices>) => void;
};

export const FIRST_CHOICES: HandOnChoices = { kind: 'song', minutes: 2 };

/** The tempo that was chosen for this song and passage, or else the song's own, or the goal of the drill's ladder. */
export function chosenBpm({ kind, tempo }: HandOnChoices, project: Project): Bpm {
  if (tempo?.projectId === project.id && tempo.kind === kind) return tempo.bpm;
  return kind === 'song' ? project.song.tempo.bpm : project.practice.drill.ladder.goalBpm;
}

function songPassage({ arrangement }: HandOnChoices, bpm: Bpm): TrackPassage {
  return { kind: 'song', bpm, ...(arrangement && { arrangement }) };
}

/** The practice track that is chosen. */
export function trackRequest(choices: HandOnChoices, project: Project): TrackRequest {
  const { practice } = project;
  const { kind, minutes } = choices;
  const bpm = chosenBpm(choices, project);
  return {
    passage:
      kind === 'song'
        ? songPassage(choices, bpm)
        : { kind, bpm, bars: drillBars(project, minutes, bpm) },
    hands: choices.hands ?? practice.hands,
    band: choices.band ?? practice.band,
    click: choices.click ?? practice.click.on,
    countInBars: choices.countInBars ?? practice.click.countInBars,
  };
}

/** What the MIDI file holds: the song at its own tempo, or one pass of the drill at its goal. */
export function midiPassage(choices: HandOnChoices, project: Project): TrackPassage {
  const { drill } = project.practice;
  return choices.kind === 'song'
    ? songPassage(choices, project.song.tempo.bpm)
    : { kind: 'drill', bpm: drill.ladder.goalBpm, bars: drill.barsPerPass };
}
