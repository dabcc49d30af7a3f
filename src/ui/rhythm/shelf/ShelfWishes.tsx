import { DENSITIES, FEELS } from '../../../core/rhythm/character.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import type { ShelfWish } from './shelfSearch.ts';

type Props = {
  readonly wish: ShelfWish;
  readonly meters: readonly string[];
  /** Tempo at which patterns are heard. */
  readonly bpm: Bpm;
  /** What the shelf is compared with, in words; undefined where nothing is played. */
  readonly likeWhat: string | undefined;
  readonly byLikeness: boolean;
  readonly onWish: (wish: ShelfWish) => void;
  readonly onByLikeness: (byLikeness: boolean) => void;
};

/** The choices of one kind, `any` among them. */
function Choice<T extends string>({
  label,
  any,
  options,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly any: string;
  readonly options: readonly (readonly [value: T, name: string])[];
  readonly chosen: T | undefined;
  readonly onChoose: (chosen: T | undefined) => void;
}) {
  return (
    <select
      aria-label={label}
      value={chosen ?? ''}
      onChange={(event) => onChoose(options.find(([value]) => value === event.target.value)?.[0])}
    >
      <option value="">{any}</option>
      {options.map(([value, name]) => (
        <option key={value} value={value}>
          {name}
        </option>
      ))}
    </select>
  );
}

const DENSITY_NAMES = {
  sparse: 'sparse, up to 1 a beat',
  medium: 'medium, up to 2 a beat',
  dense: 'dense, more than 2',
} as const;

const BUSY_NAMES = [
  ['left', 'busy left hand'],
  ['right', 'busy right hand'],
  ['both', 'both hands alike'],
] as const;

/** What is looked for: words, meter, feel, density, the busier hand, the tempo; and whether the likest come first. */
export function ShelfWishes(props: Props) {
  const { wish, meters, bpm, likeWhat, byLikeness, onWish, onByLikeness } = props;
  return (
    <div className="workshop-wishes">
      <Choice
        label="Meter"
        any="every meter"
        options={meters.map((meter) => [meter, meter] as const)}
        chosen={wish.meter}
        onChoose={(meter) => onWish({ ...wish, meter })}
      />
      <Choice
        label="Feel"
        any="every feel"
        options={FEELS.map((feel) => [feel, feel] as const)}
        chosen={wish.feel}
        onChoose={(feel) => onWish({ ...wish, feel })}
      />
      <Choice
        label="Density"
        any="every density"
        options={DENSITIES.map((density) => [density, DENSITY_NAMES[density]] as const)}
        chosen={wish.density}
        onChoose={(density) => onWish({ ...wish, density })}
      />
      <Choice
        label="Which hand is busy"
        any="either hand busy"
        options={BUSY_NAMES}
        chosen={wish.busy}
        onChoose={(busy) => onWish({ ...wish, busy })}
      />
      <button
        type="button"
        aria-pressed={wish.bpm !== undefined}
        onClick={() => onWish({ ...wish, bpm: wish.bpm === undefined ? bpm : undefined })}
      >
        Usual at {Math.round(bpm)}
      </button>
      <button
        type="button"
        aria-pressed={byLikeness}
        disabled={likeWhat === undefined}
        onClick={() => onByLikeness(!byLikeness)}
      >
        Like {likeWhat ?? 'this groove'}
      </button>
    </div>
  );
}
