import type { HandFeed, HandRules, StrokeUse } from '../../../core/rhythm/handRules.ts';
import type { Source } from '../../../core/rhythm/sources.ts';
import { PART_NAMES } from '../../parts/pattern/sourceNames.ts';
import {
  feedInto,
  HAND_NAMES,
  PLAY_CHOICES,
  playChoiceOf,
  USE_NAMES,
  withFeed,
} from './feedChoices.ts';

type Props = {
  readonly sources: readonly Source[];
  readonly rules: HandRules;
  readonly onRules: (rules: HandRules) => void;
};

function Feed({
  feed,
  onFeed,
}: {
  readonly feed: HandFeed;
  readonly onFeed: (feed: HandFeed) => void;
}) {
  const { hand, part } = feed;
  const name = PART_NAMES[part];
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <select
          aria-label={`${name} feeds`}
          value={hand}
          onChange={(event) => onFeed(feedInto(feed, event.target.value as HandFeed['hand']))}
        >
          {Object.entries(HAND_NAMES).map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </td>
      {hand !== 'neither' && (
        <>
          <td>
            <select
              aria-label={`${name} is played`}
              value={playChoiceOf(feed)}
              onChange={(event) =>
                onFeed({ ...feed, play: PLAY_CHOICES[hand][Number(event.target.value)]!.play })
              }
            >
              {PLAY_CHOICES[hand].map((choice, i) => (
                <option key={choice.name} value={i}>
                  {choice.name}
                </option>
              ))}
            </select>
          </td>
          <td>
            <select
              aria-label={`Which strokes of the ${name}`}
              value={feed.use}
              onChange={(event) => onFeed({ ...feed, use: event.target.value as StrokeUse })}
            >
              {Object.entries(USE_NAMES).map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </td>
        </>
      )}
    </tr>
  );
}

/** Which part of the band feeds which hand, and what becomes of it there; one row for each part that plays. */
export function RuleTable({ sources, rules, onRules }: Props) {
  const playing = rules.feeds.filter(({ part }) => sources.some((source) => source.part === part));
  return (
    <table className="band-rules">
      <tbody>
        {playing.map((feed) => (
          <Feed
            key={feed.part}
            feed={feed}
            onFeed={(next) => onRules(withFeed(rules, feed.part, next))}
          />
        ))}
      </tbody>
    </table>
  );
}
