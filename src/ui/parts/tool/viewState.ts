import { keptTaught, type Taught } from '../../../app/midiCommands.ts';
import type { BarRange, Times } from '../../../app/score.ts';
import { INPUT_KINDS, type InputKind } from '../../../app/takeInputs.ts';
import type { PatternId, SectionId } from '../../../core/ids.ts';
import { USUAL_PLAYING_MINUTES } from '../../../core/practice/rest.ts';
import type { Stage } from '../../../core/practice/stage.ts';
import { areHandLimits, HAND_LIMITS, type HandLimits } from '../../../core/rhythm/handLimits.ts';
import { type Arrangement, AS_WRITTEN } from '../../../state/arrangement.ts';

export const PAGES = ['map', 'hands', 'rhythm', 'drill', 'play'] as const;

export type Page = (typeof PAGES)[number];

export type Theme = 'paper' | 'stage';

/** How chords are named on the chart: as symbols, as Roman numerals or as scale-degree numbers. */
export const CHORD_NAMINGS = ['symbols', 'numerals', 'numbers'] as const;

export type ChordNamingChoice = (typeof CHORD_NAMINGS)[number];

/** Where the click is heard. */
export const CLICK_EARS = ['both', 'left', 'right'] as const;

export type ClickEar = (typeof CLICK_EARS)[number];

/** How loud each part is, 0 to 1, and in which ear the click, as set on this device; the click's loudness belongs to the song. */
export type Volumes = {
  readonly master: number;
  readonly left: number;
  readonly right: number;
  readonly band: number;
  readonly clickEar: ClickEar;
};

/**
 * What the player is heard with, if at all, and how late each input's hits arrive on this device, in
 * whole milliseconds; absent where it was never measured or set.
 */
export type HearingChoice = {
  readonly input: InputKind | 'nothing';
  readonly latencyMs: Readonly<Partial<Record<InputKind, number>>>;
};

/** How late an input's hits may arrive; below 0 is playing ahead of the click. In milliseconds. */
export const LATENCY_RANGE_MS = { lowest: -150, highest: 500 } as const;

/** What belongs to this device and is neither saved with the song nor undone. */
export type ViewState = {
  readonly page: Page;
  readonly theme: Theme | 'as the device';
  readonly volumes: Volumes;
  /** Playing tempo as a percentage of the song's. */
  readonly speedPercent: number;
  /** Key and level at which the song is played, apart from how it is written. */
  readonly arrangement: Arrangement;
  /** Section and pattern that the pages show. */
  readonly sectionId?: SectionId;
  readonly patternId?: PatternId;
  /** The section over whose progression patterns are heard; over the held chord without one. */
  readonly heardOver?: SectionId;
  /** Marked bars of the song, to be played instead of the whole. */
  readonly range?: BarRange;
  /** How often the song, or what is marked of it, is played. */
  readonly times: Times;
  readonly hearing: HearingChoice;
  /** Keys and pedals of a MIDI instrument that give commands. */
  readonly taught: Taught;
  /** What the player's hands can do, for what is marked as too much, for levels and fills. */
  readonly handLimits: HandLimits;
  /** Minutes of playing after which a rest is suggested; 0 for never. */
  readonly restMinutes: number;
  /** Rung of the tempo ladder on which the drill begins, counted from 0. */
  readonly rung: number;
  /** Stage that is drilled; one chord, as it is set, without. */
  readonly stage?: Stage;
  /**
   * The plan for practising: the minutes there are, the line that comes next, counted from 0, and when its
   * first line was begun (milliseconds since 1970), as what is played from then on does not change it.
   * `line`: the one that is practised now, since when.
   */
  readonly plan: {
    readonly minutes: number;
    readonly next: number;
    readonly begunAtMs?: number;
    readonly line?: { readonly index: number; readonly begunAtMs: number };
  };
  readonly chordNaming: ChordNamingChoice;
  /** Pages that show music as notes on staves. */
  readonly notated: readonly Page[];
  /** Chart texts that can't be read yet, kept until they are repaired; by project and section (`draftPlace`). */
  readonly chartDrafts: Readonly<Record<string, string>>;
};

/** Starts quiet; the player turns it up. */
export const FIRST_VIEW: ViewState = {
  page: 'map',
  theme: 'as the device',
  volumes: { master: 0.6, left: 0.9, right: 0.9, band: 0.6, clickEar: 'both' },
  speedPercent: 100,
  arrangement: AS_WRITTEN,
  times: 1,
  hearing: { input: 'nothing', latencyMs: {} },
  taught: {},
  handLimits: HAND_LIMITS,
  restMinutes: USUAL_PLAYING_MINUTES,
  rung: 0,
  plan: { minutes: 15, next: 0 },
  chordNaming: 'symbols',
  notated: [],
  chartDrafts: {},
};

export type ViewChange = { readonly [K in keyof ViewState]?: ViewState[K] | undefined };

export type ViewStore = {
  readonly snapshot: () => ViewState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Changes what is named; `undefined` forgets an optional choice. */
  readonly set: (change: ViewChange) => void;
};

/** The part of `localStorage` that is used. */
export type KeptText = Pick<Storage, 'getItem' | 'setItem'>;

const PLACE = 'vampwright-view';

function isShare(value: unknown): value is number {
  return typeof value === 'number' && value >= 0 && value <= 1;
}

function isMinutes(value: unknown): value is number {
  return typeof value === 'number' && value >= 0 && value <= 120;
}

function keptVolumes(kept: unknown): Volumes {
  const { master, left, right, band, clickEar } = {
    ...FIRST_VIEW.volumes,
    ...(kept as Partial<Volumes>),
  };
  return [master, left, right, band].every(isShare) && CLICK_EARS.includes(clickEar)
    ? { master, left, right, band, clickEar }
    : FIRST_VIEW.volumes;
}

function keptHandLimits(kept: unknown): HandLimits {
  const { spanSemitones, strikeGapSec, repeatGapSec, leapPerSec } = {
    ...HAND_LIMITS,
    ...(kept as Partial<HandLimits>),
  };
  const limits = { spanSemitones, strikeGapSec, repeatGapSec, leapPerSec };
  return areHandLimits(limits) ? limits : HAND_LIMITS;
}

const CLICK_PANS: Readonly<Record<ClickEar, number>> = { both: 0, left: -1, right: 1 };

/** The levels of everything but the click, and where that stands, for what plays. */
export function mixLevels({ clickEar, ...levels }: Volumes) {
  return { ...levels, clickPan: CLICK_PANS[clickEar] };
}

function keptDrafts(kept: unknown): ViewState['chartDrafts'] {
  if (typeof kept !== 'object' || kept === null) return FIRST_VIEW.chartDrafts;
  return Object.fromEntries(
    Object.entries(kept).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
  );
}

function isLatency(value: unknown): value is number {
  const { lowest, highest } = LATENCY_RANGE_MS;
  return Number.isInteger(value) && Number(value) >= lowest && Number(value) <= highest;
}

function keptHearing(kept: unknown): HearingChoice {
  const { input, latencyMs } = { ...FIRST_VIEW.hearing, ...(kept as Partial<HearingChoice>) };
  const latencies = INPUT_KINDS.flatMap((kind) => {
    const latency: unknown = latencyMs?.[kind];
    return isLatency(latency) ? [[kind, latency] as const] : [];
  });
  return {
    input: INPUT_KINDS.find((kind) => kind === input) ?? 'nothing',
    latencyMs: Object.fromEntries(latencies),
  };
}

/** What was kept on this device; anything unreadable falls back to the first view, as nothing of worth is lost. */
function keptView(kept: KeptText | undefined): ViewState {
  try {
    const read = JSON.parse(kept?.getItem(PLACE) ?? '{}') as Partial<ViewState>;
    return {
      ...FIRST_VIEW,
      page: PAGES.find((page) => page === read.page) ?? FIRST_VIEW.page,
      theme: read.theme === 'paper' || read.theme === 'stage' ? read.theme : FIRST_VIEW.theme,
      volumes: keptVolumes(read.volumes),
      hearing: keptHearing(read.hearing),
      taught: keptTaught(read.taught),
      handLimits: keptHandLimits(read.handLimits),
      ...(isMinutes(read.restMinutes) && { restMinutes: read.restMinutes }),
      chordNaming:
        CHORD_NAMINGS.find((naming) => naming === read.chordNaming) ?? FIRST_VIEW.chordNaming,
      notated: PAGES.filter((page) => Array.isArray(read.notated) && read.notated.includes(page)),
      chartDrafts: keptDrafts(read.chartDrafts),
      ...(typeof read.sectionId === 'string' && { sectionId: read.sectionId }),
      ...(typeof read.patternId === 'string' && { patternId: read.patternId }),
      ...(typeof read.heardOver === 'string' && { heardOver: read.heardOver }),
    };
  } catch {
    return FIRST_VIEW;
  }
}

/**
 * The view state of this device: read from `kept` once, written back at every change. Where the
 * device refuses to keep text (private windows; `kept` is undefined then) the view simply starts afresh next time.
 */
export function createViewStore(kept: KeptText | undefined): ViewStore {
  let view = keptView(kept);
  const listeners = new Set<() => void>();
  return {
    snapshot: () => view,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    set(change) {
      view = { ...view, ...change } as ViewState;
      try {
        kept?.setItem(PLACE, JSON.stringify(view));
      } catch {
        // Nothing of worth is lost: the view starts afresh next time.
      }
      for (const listener of listeners) listener();
    },
  };
}
