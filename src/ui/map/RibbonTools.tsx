import type { SectionKind } from '../../core/song/song.ts';
import { SECTION_KINDS } from '../../core/song/song.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { Icon } from '../kit/Icon.tsx';
import { PopupButton } from '../kit/PopupButton.tsx';
import { entryBars, markedText, playingName } from '../parts/song/marking.ts';
import { KIND_NAMES } from '../parts/song/songWords.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useView } from '../parts/tool/useProject.ts';

/** What is done to the chosen place of the form. */
export type FormActs = {
  readonly move: (from: number, to: number) => void;
  readonly playAgain: () => void;
  readonly remove: (place: number) => void;
  readonly addSection: (kind: SectionKind) => void;
};

function OrderButtons({
  place,
  last,
  acts,
}: {
  readonly place: number | undefined;
  readonly last: number;
  readonly acts: FormActs;
}) {
  const at = place ?? 0;
  return (
    <div className="songmap-tool-group" role="group" aria-label="Order">
      <button
        type="button"
        disabled={place === undefined || at === 0}
        onClick={() => acts.move(at, at - 1)}
      >
        <Icon name="left" /> Earlier
      </button>
      <button
        type="button"
        disabled={place === undefined || at === last}
        onClick={() => acts.move(at, at + 1)}
      >
        Later <Icon name="right" />
      </button>
      <button type="button" onClick={acts.playAgain}>
        Again at end
      </button>
      <button type="button" disabled={place === undefined} onClick={() => acts.remove(at)}>
        Take out
      </button>
    </div>
  );
}

/** The kinds of section; the one that is tapped is added. */
function AddSection({ onAdd }: { readonly onAdd: (kind: SectionKind) => void }) {
  return (
    <PopupButton name="New section" className="songmap-add">
      {(close) => (
        <div className="songmap-kinds">
          {SECTION_KINDS.map((kind) => (
            <button
              type="button"
              key={kind}
              onClick={() => {
                close();
                onAdd(kind);
              }}
            >
              {KIND_NAMES[kind]}
            </button>
          ))}
        </div>
      )}
    </PopupButton>
  );
}

function Marking({
  timeline,
  place,
}: {
  readonly timeline: Timeline;
  readonly place: number | undefined;
}) {
  const { view, playback } = useParts();
  const range = useView((state) => state.range);
  const times = useView((state) => state.times);
  const playMarked = () => {
    if (place === undefined) return;
    const section = entryBars(timeline, place);
    view.set({ range: section });
    void playback.play({ kind: 'song', range: section, times });
  };
  return (
    <div className="songmap-tool-group" role="group" aria-label="What is played">
      <button type="button" disabled={place === undefined} onClick={playMarked}>
        Play this section
      </button>
      <button
        type="button"
        aria-pressed={range === undefined}
        onClick={() => view.set({ range: undefined })}
      >
        Whole song
      </button>
      <button
        type="button"
        aria-pressed={times !== 1}
        onClick={() => view.set({ times: times === 1 ? 'until-stopped' : 1 })}
      >
        Repeat
      </button>
    </div>
  );
}

/** What is marked, in words; its room is kept, so that marking moves nothing on the page. */
function Marked({ timeline }: { readonly timeline: Timeline }) {
  const range = useView((state) => state.range);
  return (
    <output className="songmap-marked" title={range && markedText(timeline, range)}>
      {range && (
        <>
          <span className="visually-hidden">Marked: </span>
          {markedText(timeline, range)}
        </>
      )}
    </output>
  );
}

/** Under the ribbon: the order of playing, and what of the song is played. */
export function RibbonTools({
  timeline,
  place,
  acts,
}: {
  readonly timeline: Timeline;
  readonly place: number | undefined;
  readonly acts: FormActs;
}) {
  const name = place === undefined ? '' : playingName(timeline, place);
  return (
    <div className="songmap-tools" role="group" aria-label={`Form: ${name}`}>
      <Marking timeline={timeline} place={place} />
      <OrderButtons place={place} last={timeline.sections.length - 1} acts={acts} />
      <AddSection onAdd={acts.addSection} />
      <Marked timeline={timeline} />
    </div>
  );
}
