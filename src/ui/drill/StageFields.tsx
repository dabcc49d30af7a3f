import type { Chord } from '../../core/harmony/chord.ts';
import type { SoundingHands } from '../../core/practice/soundingHands.ts';
import { type Passage, type Stage, samePassage } from '../../core/practice/stage.ts';
import type { Level } from '../../core/rhythm/levels.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { selectProposal } from '../../state/stages.ts';
import { ChordText } from '../parts/chart/ChordField.tsx';
import { useProject } from '../parts/tool/useProject.ts';
import { levelWords, MY_HANDS, passageWords } from './stageWords.ts';

const LEVELS: readonly Level[] = [1, 2, 3, 4, 5];

/** All that can be gone through: one chord, two in turn, and the sections and joins of the song. */
function passagesOf({ sections }: Timeline, turns: Passage): Passage[] {
  const ids = [...new Set(sections.map(({ sectionId }) => sectionId))];
  const joins = sections.slice(1).map(({ sectionId: to }, i): Passage => {
    const from = sections[i]!.sectionId;
    return { kind: 'join', from, to };
  });
  const different = joins.filter((join, i) => joins.findIndex((j) => samePassage(j, join)) === i);
  return [
    { kind: 'one-chord' },
    turns,
    ...ids.map((sectionId): Passage => ({ kind: 'section', sectionId })),
    ...different,
  ];
}

/** The two chords of a stage, or those that it would have: the proposed ones. */
function turnsOf({ passage }: Stage, proposal: readonly Stage[], held: Chord): Passage {
  const turns = [passage, ...proposal.map((stage) => stage.passage)].find(
    ({ kind }) => kind === 'two-chords',
  );
  return turns ?? { kind: 'two-chords', first: held, second: held };
}

function WhatField({ stage, place, onChange }: Props) {
  const timeline = useProject(selectTimeline);
  const sections = useProject((project) => project.song.sections);
  const held = useProject((project) => project.practice.drill.chord);
  const proposal = useProject(selectProposal);
  const listed = passagesOf(timeline, turnsOf(stage, proposal, held));
  const isThere = listed.some((each) => samePassage(each, stage.passage));
  const passages = isThere ? listed : [...listed, stage.passage];
  const words = (passage: Passage) =>
    passage.kind === 'two-chords'
      ? 'Two chords in turn'
      : passageWords(passage, { song: { sections } });
  return (
    <select
      aria-label={`What stage ${place + 1} goes through`}
      value={passages.findIndex((each) => samePassage(each, stage.passage))}
      onChange={(event) => {
        const passage = passages[Number(event.target.value)];
        if (passage) onChange({ ...stage, passage });
      }}
    >
      {passages.map((passage, i) => (
        <option key={i} value={i}>
          {words(passage)}
          {!isThere && passage === stage.passage ? ' (not played)' : ''}
        </option>
      ))}
    </select>
  );
}

function HandsField({ stage, place, onChange }: Props) {
  return (
    <select
      aria-label={`My hands at stage ${place + 1}`}
      value={stage.tool ?? ''}
      onChange={(event) => {
        const { tool: _, ...rest } = stage;
        const tool = event.target.value as SoundingHands | '';
        onChange(tool ? { ...rest, tool } : rest);
      }}
    >
      {Object.entries(MY_HANDS).map(([tool, words]) => (
        <option key={tool} value={tool}>
          {words}
        </option>
      ))}
      <option value="">as set below</option>
    </select>
  );
}

function LevelField({ stage, place, onChange }: Props) {
  return (
    <select
      aria-label={`Level of stage ${place + 1}`}
      value={stage.level ?? ''}
      onChange={(event) => {
        const { level: _, ...rest } = stage;
        const level = LEVELS.find((each) => String(each) === event.target.value);
        onChange(level ? { ...rest, level } : rest);
      }}
    >
      <option value="">in full</option>
      {LEVELS.map((level) => (
        <option key={level} value={level}>
          {levelWords(level)}
        </option>
      ))}
    </select>
  );
}

type Props = {
  readonly stage: Stage;
  readonly place: number;
  readonly onChange: (stage: Stage) => void;
};

/** What a stage goes through, with which hands and at which level. */
export function StageFields(props: Props) {
  const { stage, place, onChange } = props;
  const { passage } = stage;
  return (
    <div className="practice-stage-fields">
      <WhatField {...props} />
      <HandsField {...props} />
      <LevelField {...props} />
      {passage.kind === 'two-chords' && (
        <span className="practice-stage-chords">
          {(['first', 'second'] as const).map((which) => (
            <ChordText
              key={which}
              label={`${which === 'first' ? 'First' : 'Second'} chord of stage ${place + 1}`}
              chord={passage[which]}
              onChange={(chord) => onChange({ ...stage, passage: { ...passage, [which]: chord } })}
            />
          ))}
        </span>
      )}
    </div>
  );
}
