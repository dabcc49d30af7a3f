import type { ShelfPattern } from '../../../core/rhythm/shelf.ts';
import { formatMeter } from '../../../core/time/meter.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { Icon } from '../../kit/Icon.tsx';
import type { Pixels } from '../../parts/grid/systemLayout.ts';
import { RhythmPicture } from '../../parts/picture/RhythmPicture.tsx';
import { likeWords } from './shelfSearch.ts';

type Props = {
  readonly entry: ShelfPattern;
  readonly like: number | undefined;
  readonly pictureWidth: Pixels;
  /** Tempo at which it is heard. */
  readonly bpm: Bpm;
  readonly isHeard: boolean;
  readonly onHear: () => void;
  readonly onTake: () => void;
};

/** The usual tempo, and how the song's compares with it. */
function tempoWords([slowest, fastest]: ShelfPattern['tempoRange'], bpm: Bpm): string {
  const usual = `${slowest} – ${fastest}`;
  if (bpm < slowest) return `${usual}, slower here`;
  return bpm > fastest ? `${usual}, faster here` : usual;
}

/** One pattern of the shelf: what it is for, a picture of its rhythm, to be heard and taken. */
export function ShelfEntry(props: Props) {
  const { entry, like, pictureWidth, bpm, isHeard, onHear, onTake } = props;
  const { pattern, use, origin, tempoRange } = entry;
  return (
    <li className="workshop-entry">
      <div className="workshop-entry-words">
        <h3>
          {pattern.name} <span className="workshop-meter">{formatMeter(pattern.meter)}</span>
        </h3>
        <p>{use}</p>
        <p className="workshop-facts">
          {like !== undefined && <b>{likeWords(like)}. </b>}
          Usual tempo {tempoWords(tempoRange, bpm)}. From: {origin}.
        </p>
      </div>
      <RhythmPicture pattern={pattern} width={pictureWidth} />
      <div className="workshop-entry-buttons">
        <button
          type="button"
          aria-label={`${isHeard ? 'Stop' : 'Hear'} ${pattern.name}`}
          aria-pressed={isHeard}
          onClick={onHear}
        >
          <Icon name={isHeard ? 'stop' : 'play'} />
        </button>
        <button type="button" aria-label={`Take ${pattern.name}`} onClick={onTake}>
          Take
        </button>
      </div>
    </li>
  );
}
